import { afterEach, expect, test, vi } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { reachOf } from '../../../routing/reach/reach.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { applyEdit } from '../../../web/document/change/edit.ts';
import { array } from '../../../web/document/edits/moving/copy.ts';
import { warm } from '../../../web/document/warm-up.ts';
import { SMALL } from './small-site.ts';

const refs = (['stalls', 'drops'] as const).flatMap((list) => SMALL[list]!.map(({ id }) => ({ list, id })));
const lotOf = (count: number) => applyEdit(SMALL, array(SMALL, refs, { count, step: [30, 0] }));
const LOT = lotOf(30);

afterEach(() => {
  vi.restoreAllMocks();
});

/** A clock on which every look takes so many milliseconds. */
function slowClock(ms: number): void {
  let clock = 0;
  vi.spyOn(performance, 'now').mockImplementation(() => {
    clock += ms;
    return clock;
  });
}

test('a site that takes no longer than a slice is warm before the page draws again', async () => {
  slowClock(0.1);
  let drawn = false;
  setTimeout(() => {
    drawn = true;
  });
  await warm(toSite(SMALL), () => expect.fail('no need to tell of it'));
  expect(drawn).toBe(false);
});

test('a large one lets the page draw between slices and tells how far it is', async () => {
  slowClock(30);
  let drawn = 0;
  const told: number[] = [];
  const totals = new Set<number>();
  await warm(toSite(lotOf(120)), (done, of) => {
    told.push(done);
    totals.add(of);
    setTimeout(() => {
      drawn += 1;
    });
  });
  expect(told.length).toBeGreaterThan(10);
  expect(drawn).toBe(told.length);
  expect(told).toEqual([...told].sort((a, b) => a - b));
  expect(totals.size).toBe(1);
  expect(told.at(-1)).toBeLessThan([...totals][0]!);
});

test('the plan of a warm site holds the reach that was worked, and is the plan of a cold one', async () => {
  const site = toSite(structuredClone(LOT));
  await warm(site, () => {});
  const reach = reachOf(site);
  const warmPlan = plan(site);
  expect(warmPlan.reach[0]).toBe(reach[0]);
  expect(warmPlan).toEqual(plan(toSite(structuredClone(LOT))));
});
