import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { LAYERS } from '../../../calc/sheets/drawing/layers.ts';
import { planDrawing } from '../../../calc/sheets/drawing/plan-drawing.ts';
import { planDxf } from '../../../calc/sheets/dxf/plan-dxf.ts';
import { letteredPlan } from '../../../calc/sheets/lettered/lettered-plan.ts';
import { circuitTags } from '../../../calc/sheets/pdf/schedules/circuit-words.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { readDxf } from '../../read-dxf.ts';
import { FONTS, setOf } from '../sheets/pdf/drawing-set.ts';
import { onlyPage } from './one-page.ts';
import { oursFile, turnedFile } from './ours-site.ts';

// Written by this project, read by ezdxf (see read-ours.py), and read back.
interface Told {
  readonly errors: readonly string[];
  readonly fixes: readonly string[];
  readonly unit: string;
  readonly extent: readonly [readonly number[], readonly number[]];
  readonly layers: Readonly<
    Record<string, { readonly color: number; readonly dashed: boolean; readonly weight: number }>
  >;
  readonly counts: Readonly<Record<string, number>>;
  readonly words: readonly string[];
  readonly blocks: readonly {
    readonly name: string;
    readonly at: readonly number[];
    readonly attributes: Readonly<Record<string, string>>;
    readonly seen: readonly string[];
  }[];
  readonly dimensions: readonly {
    readonly layer: string;
    readonly measured: number;
    readonly letters: readonly string[];
  }[];
  readonly lines: readonly {
    readonly layer: string;
    readonly closed: boolean;
    readonly points: readonly (readonly number[])[];
  }[];
  readonly wipeouts: readonly {
    readonly layer: string;
    readonly outline: readonly (readonly number[])[];
    readonly hides: readonly string[];
  }[];
  readonly sheets: readonly {
    readonly name: string;
    readonly scale: number;
    readonly twist: number;
    readonly hidden: readonly string[];
    readonly counts: Readonly<Record<string, number>>;
    readonly words: readonly string[];
  }[];
  readonly looks?: {
    readonly ink: readonly number[];
    readonly pdfInDxf: number;
    readonly dxfInPdf: number;
    readonly shifted: number;
    readonly hidden: number;
    readonly hiddenInPdf: number;
  };
}

const at = (name: string): URL => new URL(`./${name}`, import.meta.url);
const ALL = JSON.parse(readFileSync(at('ours.json'), 'utf8')) as Record<string, Told>;

describe.each([
  ['ft', 1, oursFile],
  // In metres with its gridlines turned.
  ['m', 0.3048, turnedFile],
] as const)('our DXF in %s', (units, perFoot, fileOf) => {
  const site = { ...toSite(fileOf()), units };
  const planned = plan(site);
  const told = ALL[units]!;
  let text = '';
  beforeAll(async () => {
    const written = await planDxf(site, planned, { fonts: FONTS, date: '2026-11-30', file: 'lot.site.json' });
    text = new TextDecoder().decode(written);
    const { REMAKE } = process.env;
    if (!REMAKE) return;
    writeFileSync(at(`ours-${units}.dxf`), text);
    mkdirSync(REMAKE, { recursive: true });
    if (units === 'ft')
      writeFileSync(
        join(REMAKE, 'sheet.pdf'),
        await onlyPage(
          await setOf({ file: fileOf(), site, planned }, { paper: 'ANSI D', date: '2026-11-30' }),
          'E-101',
        ),
      );
  });

  test('is the one that ezdxf read: run the lines at the head of read-ours.py when it changes', () => {
    const path = at(`ours-${units}.dxf`);
    expect(text === (existsSync(path) ? readFileSync(path, 'utf8') : '')).toBe(true);
  });

  test('is sound by its audit, in our units, with our layers and their pens', () => {
    expect(told.errors).toEqual([]);
    expect(told.fixes).toEqual([]);
    expect(told.unit).toBe(units);
    for (const layer of Object.values(LAYERS))
      expect(told.layers[layer.name], layer.name).toEqual({
        color: layer.index,
        dashed: 'dash' in layer,
        weight: Math.round(layer.weight * 100),
      });
  });

  test('has every line of the plan where it was drawn, within the extents that its head gives', () => {
    const [low, high] = told.extent;
    const near = (a: readonly number[], b: readonly number[]): boolean =>
      a.every((value, i) => Math.abs(value - (b[i] ?? 0) * perFoot) < 1e-4);
    const drawn = planDrawing(site, planned).items;
    expect(drawn.length).toBeGreaterThan(100);
    for (const item of drawn) {
      if (item.kind !== 'line' || item.layer === 'dimensions') continue;
      const points = item.points.map(([x, y], i) => [x, y, item.z?.[i] ?? 0]);
      const found = told.lines.filter(
        (line) =>
          line.layer === LAYERS[item.layer].name &&
          line.closed === item.closed &&
          line.points.length === points.length &&
          line.points.every((point, i) => near(point, points[i]!)),
      );
      expect(found.length, JSON.stringify(item)).toBeGreaterThan(0);
      for (const [x, y] of points) {
        expect(x! * perFoot).toBeGreaterThanOrEqual(low[0]! - 1e-6);
        expect(y! * perFoot).toBeLessThanOrEqual(high[1]! + 1e-6);
      }
    }
  });

  test('has each drop as a block with its number, circuit and size, and likewise boxes, conduits, equipment and feeders', () => {
    const tags = circuitTags(site);
    for (const drop of site.drops) {
      const [block, ...more] = told.blocks.filter(({ attributes }) => attributes.TAG === drop.id);
      expect(more).toEqual([]);
      expect(block!.name).toBe(drop.retractor ? 'RETRACTOR' : 'BOX');
      const end = drop.retractor ?? drop.box;
      end.forEach((value, i) => {
        expect(block!.at[i]).toBeCloseTo(value * perFoot, 5);
      });
      const charger = site.chargers.find((one) => one.drop === drop.id)!;
      expect(block!.attributes).toMatchObject({
        CIRCUIT: tags.get(charger.id),
        CHARGER: charger.id,
        FROM: charger.from,
      });
      const box = planned.boxes.find(({ id }) => id === drop.id)!;
      expect(block!.attributes.SIZE).toBe([...new Set(box.raceways)].join(', '));
      expect(block!.seen).toEqual(['TAG', 'CIRCUIT']);
    }
    const tagsOf = (name: string) =>
      told.blocks.filter((block) => block.name === name).map(({ attributes }) => attributes.TAG);
    expect(tagsOf('CONDUIT_TAG')).toEqual(planned.conduits.map(({ id }) => id));
    expect(tagsOf('EQUIPMENT_TAG')).toEqual(site.equipment.map(({ id }) => id));
    expect(tagsOf('FEEDER_TAG')).toEqual(site.feeders.map(({ id }) => id));
    const junctions = planned.boxes.filter(({ kind }) => kind === 'junction');
    expect(tagsOf('JUNCTION').sort()).toEqual(junctions.map(({ id }) => id).sort());
  });

  test('has real dimensions that measure what is written on them', () => {
    const [own, ...others] = told.dimensions.filter(({ layer }) => layer === 'G-ANNO-DIMS');
    expect(others).toEqual([]);
    expect(own!.measured).toBeCloseTo(23.5 * perFoot, 5);
    const set = told.dimensions.filter(({ layer }) => layer === 'E-POWR-DIMS');
    expect(set.length).toBeGreaterThan(4);
    for (const { measured, letters } of set)
      for (const words of letters) expect(Math.abs(measured - lengthIn(words, units))).toBeLessThan(0.006);
  });

  test('has white under its words wherever the drawing set has it, over lines and under all letters', async () => {
    const { marks } = await letteredPlan(site, planned, { fonts: FONTS, date: '2026-11-30', file: 'lot.site.json' });
    const white = marks.filter((mark) => mark.kind === 'fill' && mark.colour === '#ffffff');
    expect(white.length).toBeGreaterThan(2);
    for (const mark of white) {
      const { points } = mark as typeof mark & { readonly points: readonly (readonly number[])[] };
      const [found, ...more] = told.wipeouts.filter(({ outline }) =>
        points.every((point) =>
          outline.some((corner) => point.every((value, i) => Math.abs(value * perFoot - corner[i]!) < 1e-4)),
        ),
      );
      expect(more).toEqual([]);
      // Where a sheet hides the words of the model, it hides their white.
      expect(told.sheets[0]!.hidden).toContain(found!.layer);
    }
    expect(told.wipeouts.flatMap(({ hides }) => hides)).toEqual([]);
    expect(told.sheets[0]!.counts.WIPEOUT).toBeGreaterThan(3);
  });

  test('has its plan sheets with title block, words and a view to scale, in which the words of the model are hidden', () => {
    const [sheet] = told.sheets;
    expect(told.sheets.length).toBeLessThan(3);
    expect(sheet!.name).toBe('E-101 Raceway and drop plan');
    for (const words of ['E-101', 'D01', 'NOT FOR CONSTRUCTION']) expect(sheet!.words).toContain(words);
    // 1/8 in = 1 ft is 8 ft to an inch; 1:50 is 1.27 m to an inch.
    const inch = units === 'ft' ? sheet!.scale * 12 : sheet!.scale / 0.0254;
    expect([48, 64, 96, 50, 100]).toContain(Math.round(inch * 1000) / 1000);
    expect(sheet!.twist).toBeCloseTo(units === 'ft' ? 0 : 330, 6);
    expect(sheet!.hidden).toEqual(expect.arrayContaining(['E-POWR-TEXT', 'E-POWR-DIMS', 'S-GRID']));
    expect(sheet!.hidden).not.toContain('E-POWR-CNDT');
    expect(sheet!.counts.DIMENSION).toBeGreaterThan(2);
  });

  test('comes back in as it went out, names of any script among it', () => {
    const read = readDxf(text);
    if (!read.ok) throw new Error(read.fault.says);
    const { lines, words, feetPerUnit } = read.value;
    expect(feetPerUnit).toBeCloseTo(1 / perFoot, 9);
    const stalls = lines.filter(({ layer }) => layer === 'C-PKNG-STAL');
    expect(stalls).toHaveLength(site.stalls.length);
    const said = words.map((one) => one.words);
    expect(said).toContain('D01');
    expect(said.join(' ')).toContain('Парковка 充电 "A"');
    expect(told.words.join(' ')).toContain('Парковка 充电 "A"');
    expect(said.join(' ')).toContain('authority having jurisdiction');
  });
});

// Ink within two pixels of a sixtieth of an inch, of the sheet by ezdxf and of the PDF by poppler, one in the other.
test('its sheet looks as the PDF does', () => {
  const { ink, pdfInDxf, dxfInPdf, shifted, hidden, hiddenInPdf } = ALL.ft!.looks!;
  expect(Math.min(...ink)).toBeGreaterThan(20_000);
  expect(pdfInDxf).toBeGreaterThan(0.95);
  expect(dxfInPdf).toBeGreaterThan(0.95);
  expect(shifted).toBeLessThan(0.7);
  // Lines under words.
  expect(hidden).toBeGreaterThan(30);
  expect(hiddenInPdf).toBeLessThan(0.1);
});

/** A length as it is written, in the unit. */
function lengthIn(words: string, units: 'ft' | 'm'): number {
  if (units === 'm') return Number(/^([\d.]+)/.exec(words)![1]);
  const [, feet = '0', whole = '0', over = '0', under = '1'] =
    /^(?:(\d+)')? ?(?:(\d+)(?: (\d+)\/(\d+))?")?$/.exec(words) ?? [];
  return Number(feet) + (Number(whole) + Number(over) / Number(under)) / 12;
}
