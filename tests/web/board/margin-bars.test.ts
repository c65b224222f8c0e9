import { readFileSync } from 'node:fs';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { marginsOf } from '../../../calc/plan/margins.ts';
import { plan } from '../../../calc/plan/plan.ts';
import { readSite } from '../../../routing/site/file/read.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import type { BoardInk } from '../../../web/board/painting/ink.ts';
import { type BoardPen, boardFrame, type Frame } from '../../../web/board/pictures/frame.ts';
import { drawMarginBars, sameBars } from '../../../web/board/pictures/stalls/margin-bars.ts';
import { type Scene, sceneOf } from '../../../web/board/scene/scene.ts';
import { applyEdit } from '../../../web/document/change/edit.ts';
import { moveElements } from '../../../web/document/edits/moving/move.ts';

type Rect = readonly [x: number, y: number, width: number, height: number];

/** A path that keeps account of what is put into it. */
class Path {
  readonly rects: Rect[] = [];
  readonly lines: (readonly [x: number, y: number])[] = [];
  rect(...box: Rect): void {
    this.rects.push(box);
  }
  moveTo(...to: [number, number]): void {
    this.lines.push(to);
  }
  lineTo(...to: [number, number]): void {
    this.lines.push(to);
  }
}

beforeEach(() => {
  vi.stubGlobal('Path2D', Path);
});
afterEach(() => {
  vi.unstubAllGlobals();
});

const INK = { paper: 'paper', pass: 'pass', fail: 'fail', ink: 'ink' } as BoardInk;

interface Drawn {
  /** Calls that put ink on the board, in their order. */
  readonly calls: { readonly how: 'fill' | 'stroke'; readonly color: string; readonly path: Path }[];
  readonly of: (how: 'fill' | 'stroke', color: string) => readonly Path[];
}

function draw(scene: Scene, drops: readonly string[]): Drawn {
  const calls: Drawn['calls'] = [];
  const pen = {
    fillStyle: '',
    strokeStyle: '',
    lineWidth: 0,
    fill(path: Path) {
      calls.push({ how: 'fill', color: this.fillStyle, path });
    },
    stroke(path: Path) {
      calls.push({ how: 'stroke', color: this.strokeStyle, path });
    },
  };
  const camera = { x: 40, y: 0, scale: 10 };
  const frame: Frame = boardFrame(camera, { width: 1000, height: 600 }, INK, {
    scene,
    station: 'layout',
    margins: true,
  });
  const marks = scene.drops.items.filter(({ drop }) => drops.includes(drop.id));
  drawMarginBars(pen as unknown as BoardPen, frame, marks, 6);
  return {
    calls,
    of: (how, color) => calls.filter((call) => call.how === how && call.color === color).map(({ path }) => path),
  };
}

function sample(name: string): SiteFile {
  const read = readSite(readFileSync(`samples/${name}.site.json`, 'utf8'));
  if (!read.ok) throw new Error('the sample is not valid');
  return read.file;
}

function sceneFor(file: SiteFile): Scene {
  const site = toSite(file);
  return sceneOf(site, plan(site));
}

const library = sample('library-lot');
const calm = sceneFor(library);
const hospital = sceneFor(sample('hospital-lot'));
const idsOf = (scene: Scene): readonly string[] => scene.drops.items.map(({ drop }) => drop.id);

test('a lot without a shortage has three filled bars beside every drop and none that fails', () => {
  const { of } = draw(calm, idsOf(calm));
  const [pass] = of('fill', 'pass');
  expect(pass!.rects).toHaveLength(3 * calm.site.drops.length);
  for (const path of of('stroke', 'fail')) expect([path.rects, path.lines]).toEqual([[], []]);
});

test('bars begin at the center mark and are as long as what is left', () => {
  const one = draw(calm, ['D05']);
  const [[middle]] = one.of('stroke', 'ink')[0]!.lines as [[number, number]];
  const rects = one.of('fill', 'pass')[0]!.rects;
  const margins = marginsOf(calm.plan, calm.site).get('EV05')!;
  expect(rects.map(([x]) => x)).toEqual([middle, middle, middle]);
  const [cord, branch, volts] = rects.map(([, , width]) => width) as [number, number, number];
  // By scale: 10 ft of cord, 250 ft of branch and 3 % are each a full half bar.
  expect(cord / branch).toBeCloseTo(margins.cord!.left / 10 / (margins.branch!.left / 250), 6);
  expect(volts / branch).toBeCloseTo(margins.volts!.left / 3 / (margins.branch!.left / 250), 6);
  // Cord above branch above volts.
  expect(rects.map(([, y]) => y)).toEqual(rects.map(([, y]) => y).sort((a, b) => a - b));
});

test('a failing margin lies left of the mark, in outline and hatched: told by its form and not its color', () => {
  const one = draw(hospital, ['D240']);
  const [[middle]] = one.of('stroke', 'ink')[0]!.lines as [[number, number]];
  const [outline, hatch] = one.of('stroke', 'fail');
  expect(outline!.rects).toHaveLength(1);
  const [x, , width] = outline!.rects[0]!;
  expect(x + width).toBeCloseTo(middle, 9);
  expect(hatch!.lines.length).toBeGreaterThan(1);
  expect(one.of('fill', 'pass')[0]!.rects).toHaveLength(2);
});

test('a drop without a charger has no bars', () => {
  const lone = sceneFor({ ...library, chargers: [] });
  const { calls } = draw(lone, idsOf(lone));
  for (const { path } of calls) expect([path.rects, path.lines]).toEqual([[], []]);
});

test('however many drops there are, they are put down in five strokes of the pen', () => {
  expect(hospital.site.drops.length).toBe(240);
  expect(draw(hospital, idsOf(hospital)).calls).toHaveLength(5);
  expect(draw(hospital, ['D001']).calls).toHaveLength(5);
});

test('bars of neighbors a compact stall apart lie clear of each other', () => {
  const grounds = draw(calm, idsOf(calm)).of('fill', 'paper')[0]!.rects;
  for (const [i, a] of grounds.entries())
    for (const b of grounds.slice(i + 1)) {
      const wide = Math.min(a[0] + a[2], b[0] + b[2]) - Math.max(a[0], b[0]);
      const high = Math.min(a[1] + a[3], b[1] + b[3]) - Math.max(a[1], b[1]);
      expect(wide > 0 && high > 0).toBe(false);
    }
});

test('bars are drawn anew for the drop that moved and for no other', () => {
  const edit = moveElements(library, [{ list: 'drops', id: 'D05' }], 0, 2);
  const moved = sceneFor(applyEdit(library, edit));
  expect(idsOf(calm).filter((id) => !sameBars(calm, moved, id))).toEqual(['D05']);
});
