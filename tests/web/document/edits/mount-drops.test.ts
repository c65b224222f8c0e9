import { describe, expect, test } from 'vitest';
import { plan } from '../../../../calc/plan/plan.ts';
import type { Mount } from '../../../../routing/site/schema/vocabulary.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { mountDrops } from '../../../../web/document/edits/charging/mount-drops.ts';
import { waylessAt } from '../../../../web/panels/elements/drops/wayless.ts';
import { mountedWords } from '../../../../web/words/mounted.ts';
import { libraryLot } from '../../../bench/samples/library-lot.ts';
import { checkEdit } from './check-edit.ts';

const LOT = libraryLot();
const ALL = (LOT.drops ?? []).map(({ id }) => id);

const mounted = (file: SiteFile, ids: readonly string[], mount: Mount) => {
  const done = mountDrops(file, toSite(file), ids, mount);
  return { done, after: checkEdit(file, done.edit) };
};

describe('a lot of drops overhead, mounted on pedestals', () => {
  const { done, after } = mounted(LOT, ALL, 'pedestal');
  const made = plan(toSite(after));

  test('come down to a hand’s height in one step, without the retractors that hung their cords', () => {
    expect(done.edit.name).toBe('Set the mount of 16 drops');
    for (const [i, { box, retractor, mount }] of (after.drops ?? []).entries()) {
      const was = LOT.drops![i]!;
      expect([box[0], box[1], box[2]]).toEqual([was.box[0], was.box[1], 3]);
      expect([retractor, mount]).toEqual([undefined, 'pedestal']);
    }
    expect(made.findings.filter(({ rule }) => rule === 'pedestal-height')).toEqual([]);
  });

  test('are not fed by the trunk overhead any more, and it is said', () => {
    const wayless = waylessAt(made, toSite(after), new Set(ALL));
    expect(wayless).toHaveLength(16);
    expect(mountedWords(done, 'pedestal', wayless.length, 'ft')).toBe(
      `16 drops are pedestals now: boxes down at 3' 0", retractors taken away. 16 chargers have no way that comes down to them: draw it, or have it proposed in the ground.`,
    );
  });

  test('overhead again hang at the usual height, with a retractor below', () => {
    const { done: back, after: again } = mounted(after, ['D01'], 'overhead');
    expect(again.drops![0]).toMatchObject({ box: [LOT.drops![0]!.box[0], LOT.drops![0]!.box[1], 11] });
    expect(again.drops![0]!.retractor?.[2]).toBe(10);
    expect(again.drops![0]!.mount).toBeUndefined();
    expect(mountedWords(back, 'overhead', 0, 'ft')).toBe(
      `D01 hangs overhead now: box up at 11' 0", a retractor hung below.`,
    );
  });
});

test('a pedestal that stood within reach already stays where it is; one mounted so already is left alone', () => {
  const low: SiteFile = {
    ...LOT,
    drops: LOT.drops!.map(({ retractor: _, ...drop }) => ({ ...drop, box: [drop.box[0], drop.box[1], 2.5] as const })),
  } as unknown as SiteFile;
  const { done, after } = mounted(low, ['D01'], 'pedestal');
  expect(after.drops![0]!.box[2]).toBe(2.5);
  expect([done.moved, done.bared]).toEqual([[], []]);
  expect(mounted(after, ['D01'], 'pedestal').done.edit.steps).toEqual([]);
});

test('in a metric file the height is in meters, and nothing else of the place changes', () => {
  const metric: SiteFile = {
    format: 'overrow/site',
    version: 1,
    units: 'm',
    name: 'metric',
    drops: [{ id: 'D1', box: [3.3, -1.7, 3.4], retractor: [3.3, -1.7, 3.1], cord: 7 }],
  };
  const { after } = mounted(metric, ['D1'], 'wall');
  expect(after.drops![0]).toEqual({ id: 'D1', box: [3.3, -1.7, 0.9144], cord: 7, mount: 'wall' });
});

test('a pedestal tapped from a raceway overhead is told, and loses the word when its way comes down', () => {
  const lot = (riser: boolean): SiteFile => ({
    format: 'overrow/site',
    version: 1,
    units: 'ft',
    name: 'low trunk',
    equipment: [{ id: 'P1', kind: 'panelboard', at: [0, 0], size: [3, 1, 6], entry: [0, 0, 6], volts: 208, phases: 3 }],
    raceways: [
      {
        id: 'R1',
        path: riser
          ? [
              [0, 0, 6],
              [0, 0, 8.5],
              [20, 0, 8.5],
              [20, 0, 3],
            ]
          : [
              [0, 0, 6],
              [0, 0, 8.5],
              [20, 0, 8.5],
            ],
        method: 'EMT',
        place: 'overhead',
      },
    ],
    drops: [{ id: 'D1', box: [20, 0, 3], cord: 20, mount: 'pedestal' }],
    chargers: [{ id: 'C1', drop: 'D1', stalls: [], from: 'P1', amps: 32, volts: 208, phases: 1 }],
  });
  const fed = (riser: boolean) =>
    plan(toSite(lot(riser))).findings.filter(({ rule }) => rule === 'pedestal-feed' || rule === 'no-run');
  expect(fed(false)).toMatchObject([
    { rule: 'pedestal-feed', severity: 'fail', about: ['C1', 'D1', 'R1'], value: 8.5 },
  ]);
  expect(fed(true)).toEqual([]);
});
