import { expect, test } from 'vitest';
import { plan as whole } from '../../../calc/plan/plan.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { ifCounted, onCounted, pagePlan } from '../../../web/document/planning.ts';
import { SMALL } from './small-site.ts';

test('a plan of the page has its takeoff and what hangs once what counts it has come, and says so', async () => {
  const site = toSite(SMALL);
  const planned = pagePlan(site);
  let heard = 0;
  const stop = onCounted(() => heard++);
  expect(ifCounted(planned)).toBe(null);
  expect(() => (planned as ReturnType<typeof whole>).takeoff).toThrow(RangeError);
  const { withCounts: counted } = await import('../../../web/document/counted-plan.ts');
  expect(heard).toBe(1);
  stop();
  const { takeoff, hung, loose } = whole(toSite(structuredClone(SMALL)));
  expect(counted(planned).takeoff).toEqual(takeoff);
  expect([counted(planned).hung, ifCounted(planned)?.loose]).toEqual([hung, loose]);
});
