import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { withPullPoints } from '../../../calc/propose/raceways/pull-points.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';

type Panel = NonNullable<SiteFile['equipment']>[number];

const panel = (id: string, x: number, y: number): Panel => ({
  id,
  kind: 'panelboard',
  volts: 208,
  phases: 3,
  busAmps: 225,
  mainAmps: 225,
  spaces: 42,
  at: [x, y],
  size: [3, 1, 6],
  entry: [x, y, 6],
});

/** Corners of a stair in the ground, each 3 ft aside and so far on. */
const stair = (steps: number, on: number): [number, number, number][] =>
  Array.from({ length: steps }, (_, i) => [
    [3 * i, on * i, -2] as [number, number, number],
    [3 * i, on * (i + 1), -2] as [number, number, number],
  ]).flat();

/** A feeder along a stair in the ground; panels that a wall holds back to back stand over some of its corners. */
function stairs(over: readonly number[], on: number): SiteFile {
  const steps = 9;
  const [x, y] = [3 * (steps - 1), on * steps];
  return {
    format: 'overrow/site',
    version: 1,
    units: 'ft',
    name: 'a stair',
    equipment: [
      { id: 'SVC', kind: 'source', at: [0, -3], size: [4, 3, 6], entry: [0, 0, 3], volts: 208, phases: 3 },
      ...over.flatMap((i) => [panel(`A${i}`, 3 * i, on * (i + 1)), panel(`B${i}`, 3 * i + 3, on * (i + 1))]),
      panel('P1', x, y),
    ],
    raceways: [
      {
        id: 'R1',
        method: 'PVC40',
        place: 'underground',
        path: [[0, 0, 3], ...stair(steps, on), [x, y, 6]],
      },
    ],
    feeders: [
      {
        id: 'F1',
        from: 'SVC',
        to: 'P1',
        breakerAmps: 225,
        conductor: { size: '4/0', metal: 'copper', insulation: 'THHN', sets: 1 },
      },
    ],
  };
}

const troubles = (file: SiteFile): readonly string[] =>
  plan(toSite(file)).findings.flatMap(({ rule, says }) => (['bends', 'pull-length'].includes(rule) ? [says] : []));

test.each([
  ['nothing', [], 60],
  ['panels over the corner where the second box would be', [3], 60],
  ['panels over the first', [1], 60],
  ['panels over most corners', [1, 2, 3, 4, 5, 6], 60],
  ['panels over most corners of a way too long to pull', [1, 2, 3, 4, 5, 6], 90],
] as const)('a feeder that bends all the way is opened often enough, with %s', (_, over, on) => {
  const bent = stairs(over, on);
  expect(troubles(bent)).not.toEqual([]);
  const { file, added } = withPullPoints(bent);
  expect(troubles(file)).toEqual([]);
  expect(added).toBe(file.pullpoints!.length);
  // As few as will do, one for each time that a box had to stand ahead of its bend beside them.
  const alone = withPullPoints(stairs([], on)).added;
  expect(added).toBeLessThanOrEqual(2 * alone);
  const shut = toSite(file).pullpoints.filter(({ at: [x, y, z] }) =>
    bent.equipment!.some(({ at, size }) => {
      const [a, b] = [at as readonly number[], size as readonly number[]];
      return z < 0 && Math.abs(x - a[0]!) < b[0]! / 2 + 0.4 && Math.abs(y - a[1]!) < b[1]! / 2 + 0.4;
    }),
  );
  expect(shut).toEqual([]);
});

test('what a way has enough boxes on gets no more', () => {
  const { file } = withPullPoints(stairs([3], 60));
  expect(withPullPoints(file).added).toBe(0);
});

test('where a conduit may be no longer just past the end of its raceway, the pull point stands at that end', () => {
  const [end, gap] = [40, 3];
  const file: SiteFile = {
    ...stairs([], 9),
    equipment: [
      { id: 'SVC', kind: 'source', at: [0, -3], size: [4, 3, 6], entry: [0, 0, 3], volts: 208, phases: 3 },
      panel('P1', end + gap, 0),
    ],
    raceways: [
      {
        id: 'R1',
        method: 'EMT',
        place: 'overhead',
        path: [
          [0, 0, 3],
          [end, 0, 3],
          [end, 0, 6],
        ],
      },
    ],
    rules: { tapLimit: gap, pullLimit: end + 3 + 1 },
  };
  const { file: next } = withPullPoints(file);
  expect(next.pullpoints!.map(({ at }) => at)).toEqual([[end, 0, 6]]);
  const rules = plan(toSite(next)).findings.map(({ rule }) => rule);
  expect(rules).not.toContain('loose-pull-point');
  expect(rules).not.toContain('pull-length');
  // Without it the conduit is too long.
  expect(plan(toSite(file)).findings.map(({ rule }) => rule)).toContain('pull-length');
});
