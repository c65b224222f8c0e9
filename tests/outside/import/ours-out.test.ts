import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { DrawnItem } from '../../../calc/sheets/drawing/drawing.ts';
import { LAYERS } from '../../../calc/sheets/drawing/layers.ts';
import { dxf } from '../../../calc/sheets/dxf.ts';
import { readDxf } from '../../read-dxf.ts';
import { OURS } from './ours-drawing.ts';

// Written by this project, read by ezdxf (see read-ours.py), and read back.
interface Found {
  readonly kind: string;
  readonly layer: string;
  readonly points?: readonly (readonly number[])[];
  readonly closed?: boolean;
  readonly mode?: string;
  readonly at?: readonly number[];
  readonly radius?: number;
  readonly words?: string;
  readonly height?: number;
  readonly turn?: number;
  readonly anchor?: string;
  readonly name?: string;
}
interface Told {
  readonly errors: readonly string[];
  readonly fixes: readonly string[];
  readonly unit: string;
  readonly layers: readonly (readonly [string, number, boolean])[];
  readonly entities: readonly Found[];
}

const at = (name: string): URL => new URL(`./${name}`, import.meta.url);
const METRES = 0.3048;

describe.each([
  ['ft', 'ft', 1],
  ['m', 'm', METRES],
] as const)('our DXF in %s', (units, unit, perFoot) => {
  const text = dxf(OURS, units);
  const path = at(`ours-${units}.dxf`);
  if (process.env.REMAKE) writeFileSync(path, text);
  const kept = existsSync(path) ? readFileSync(path, 'utf8') : '';
  const told = (JSON.parse(readFileSync(at('ours.json'), 'utf8')) as Record<string, Told>)[units]!;
  const entitiesIn = (file: string): string => file.slice(file.indexOf('\nBLOCKS\n'), file.indexOf('\nOBJECTS\n'));

  test('is the one that ezdxf read: run the lines at the head of read-ours.py when it changes', () => {
    expect(entitiesIn(text)).toBe(entitiesIn(kept));
  });

  test('is sound by its audit, in our units, with our layers', () => {
    expect(told.errors).toEqual([]);
    expect(told.fixes).toEqual([]);
    expect(told.unit).toBe(unit);
    const names = new Map(told.layers.map(([name, ...rest]) => [name, rest]));
    for (const item of OURS.items) {
      const layer = { dash: undefined, ...LAYERS[item.layer] };
      expect(names.get(layer.name), layer.name).toEqual([layer.index, layer.dash !== undefined]);
    }
  });

  test('has each thing where it was drawn, in order', () => {
    const scaled = (...feet: readonly number[]): readonly unknown[] =>
      feet.map((one) => expect.closeTo(one * perFoot, 4) as unknown);
    const wanted = (item: DrawnItem): Found => {
      const layer = LAYERS[item.layer].name;
      switch (item.kind) {
        case 'line': {
          const { z, closed } = item;
          const points = item.points.map(([x, y], i) => scaled(x, y, z?.[i] ?? 0)) as number[][];
          return z
            ? { kind: 'POLYLINE', layer, closed, mode: 'AcDb3dPolyline', points }
            : { kind: 'LWPOLYLINE', layer, closed, points };
        }
        case 'circle':
          return {
            kind: 'CIRCLE',
            layer,
            at: scaled(...item.at, 0) as number[],
            radius: scaled(item.radius)[0] as number,
          };
        case 'text':
          return {
            kind: 'TEXT',
            layer,
            at: scaled(...item.at, 0) as number[],
            // What would be a sign of the format is parted by a blank; a caret is written so.
            words: item.text.replace('%%', '% %'),
            height: scaled(item.height)[0] as number,
            turn: item.turn,
            anchor: { left: 'LEFT', middle: 'CENTER', right: 'RIGHT' }[item.anchor],
          };
        case 'symbol':
          return {
            kind: 'INSERT',
            layer,
            name: item.symbol.replace('-', '_').toUpperCase(),
            at: scaled(...item.at, item.z) as number[],
          };
      }
    };
    expect(told.entities.slice(0, OURS.items.length)).toEqual(OURS.items.map(wanted));
    const after = told.entities.slice(OURS.items.length);
    expect(after.every(({ kind }) => kind === 'TEXT')).toBe(true);
    expect(after.map(({ words }) => words).join(' ')).toContain('authority having jurisdiction');
  });

  test('comes back in as it went out', () => {
    const read = readDxf(text);
    if (!read.ok) throw new Error(read.fault.says);
    const { lines, words, feetPerUnit, notes } = read.value;
    expect(feetPerUnit).toBeCloseTo(1 / perFoot, 9);
    expect(notes).toEqual([]);
    for (const item of OURS.items) {
      const layer = LAYERS[item.layer].name;
      if (item.kind === 'line')
        expect(
          lines.some(
            (line) =>
              line.layer === layer &&
              line.closed === item.closed &&
              line.points.length === item.points.length &&
              line.points.every(([x, y], i) => {
                const [ix, iy] = item.points[i]!;
                return Math.hypot(x / perFoot - ix, y / perFoot - iy) < 1e-5;
              }),
          ),
        ).toBe(true);
      if (item.kind === 'text') {
        const found = words.find(
          (one) => Math.hypot(one.at[0] / perFoot - item.at[0], one.at[1] / perFoot - item.at[1]) < 1e-5,
        );
        expect(found).toMatchObject({ layer, anchor: item.anchor });
        expect(found!.turn).toBeCloseTo(item.turn, 6);
        expect(found!.height / perFoot).toBeCloseTo(item.height, 6);
      }
      if (item.kind === 'circle' || item.kind === 'symbol')
        expect(
          lines.some(
            (line) =>
              line.layer === layer &&
              line.points.every(([x, y]) => Math.hypot(x / perFoot - item.at[0], y / perFoot - item.at[1]) < 1.5),
          ),
        ).toBe(true);
    }
  });
});
