import { expect, test } from 'vitest';
import type { Point3 } from '../../../routing/site/site.ts';
import type { BoardPen, Frame } from '../../../web/board/pictures/frame.ts';
import { laneLegs } from '../../../web/board/pictures/ways/lane-legs.ts';
import { traceBeside } from '../../../web/board/pictures/ways/lanes.ts';
import { lanesOf } from '../../../web/board/scene/lanes.ts';
import type { RunMark } from '../../../web/board/scene/mark.ts';

/** A pen that writes down where it goes. */
function traced(path: readonly Point3[], offset: number): readonly (readonly [string, number, number])[] {
  const steps: (readonly [string, number, number])[] = [];
  const tidy = (x: number): number => Math.round(x * 1000) / 1000 + 0;
  const pen = {
    moveTo: (x: number, y: number) => steps.push(['move', tidy(x), tidy(y)]),
    lineTo: (x: number, y: number) => steps.push(['line', tidy(x), tidy(y)]),
  } as unknown as BoardPen;
  traceBeside(pen, { scale: 10, left: 0, top: 0 } as Frame, path, offset);
  return steps;
}

test('a lane keeps its distance to the right on both legs of a corner, with one mitred point between', () => {
  // East 10 ft, then north 10 ft: on the screen right, then up. Right of travel is south, then east.
  const path: Point3[] = [
    [0, 0, 11],
    [10, 0, 11],
    [10, 10, 11],
  ];
  expect(traced(path, 3)).toEqual([
    ['move', 0, 3],
    ['line', 103, 3],
    ['line', 103, -100],
  ]);
});

test('a riser has no length in plan and bends nothing', () => {
  const path: Point3[] = [
    [0, 0, 6],
    [0, 0, 11],
    [10, 0, 11],
  ];
  expect(traced(path, 2)).toEqual([
    ['move', 0, 2],
    ['line', 100, 2],
  ]);
});

test('a run that doubles back is drawn with a blunt end, not a spike', () => {
  const path: Point3[] = [
    [0, 0, 11],
    [10, 0, 11],
    [4, 0, 11],
  ];
  for (const [, x] of traced(path, 2)) expect(x).toBeLessThanOrEqual(100);
});

test('a run that stands upright is not drawn in plan', () => {
  expect(
    traced(
      [
        [5, 5, 0],
        [5, 5, 9],
      ],
      2,
    ),
  ).toEqual([]);
});

// Colors by trade custom, no source: the code fixes only those of neutral and ground.
test.each([
  ['AB', 208, ['black', 'red']],
  ['BC', 208, ['red', 'blue']],
  ['ABC', 208, ['black', 'red', 'blue']],
  ['AB', 480, ['brown', 'orange']],
  ['ABC', 480, ['brown', 'orange', 'yellow']],
] as const)('lines %s at %d V are %j', (phases, volts, colors) => {
  expect(lanesOf(phases, volts).map(({ color }) => color)).toEqual(colors);
});

test('a line keeps its side of the raceway whatever it is paired with', () => {
  const side = (phases: 'AB' | 'BC' | 'CA', color: string) =>
    lanesOf(phases, 208).find((lane) => lane.color === color)?.lane;
  expect(side('AB', 'black')).toBe(side('CA', 'black'));
  expect(side('AB', 'red')).toBe(side('BC', 'red'));
  expect(side('BC', 'blue')).toBe(side('CA', 'blue'));
});

/** A run along raceway T from the panel at x = 0 to a drop 9 ft up a raceway of its own at x. */
const branch = (x: number, phases: 'AB' | 'BC'): RunMark =>
  ({
    run: { legs: ['T', `R${x}`] },
    path: [
      [0, 0, 11],
      [x, 0, 11],
      [x, 9, 11],
    ],
    lanes: lanesOf(phases, 208),
  }) as unknown as RunMark;

test('what runs share is told once: of each lane on the trunk only the longest', () => {
  const legs = laneLegs([branch(20, 'AB'), branch(50, 'AB'), branch(30, 'BC')]);
  const trunk = legs.filter(({ y, uy }) => y === 0 && uy === 0);
  expect(trunk).toHaveLength(1);
  expect(trunk[0]!.lanes.map(({ color, length }) => [color, length])).toEqual([
    ['black', 50],
    ['red', 50],
    ['blue', 30],
  ]);
  expect(legs).toHaveLength(4);
});

test('the longest lane of a trunk ends in the turn of its own run', () => {
  const [trunk] = laneLegs([branch(50, 'AB'), branch(20, 'AB')]);
  expect(trunk!.lanes.map(({ after }) => after)).toEqual([
    [0, 1],
    [0, 1],
  ]);
});
