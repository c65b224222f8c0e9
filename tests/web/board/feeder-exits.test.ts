import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { feederExits } from '../../../web/board/pictures/ways/feeder-exits.ts';
import { sceneOf } from '../../../web/board/scene/scene.ts';
import { hospitalLot } from '../../bench/samples/hospital-lot.ts';

const site = toSite(hospitalLot());
const scene = sceneOf(site, plan(site));

/** The part of the plan from one corner to the other, at two pixels to a foot. */
const view = (minX: number, minY: number, maxX: number, maxY: number) => ({
  scale: 2,
  left: -minX * 2,
  top: maxY * 2,
  width: (maxX - minX) * 2,
  height: (maxY - minY) * 2,
  scene,
});

test('a service out of view is told once, where its first feeder leaves the view, with the way that is left to it', () => {
  const source = site.equipment.find(({ kind }) => kind === 'source')!;
  const links = scene.feeders.items;
  const edge = source.at[0] + 50;
  const exits = feederExits(view(edge, -500, 1000, 1000), links);
  expect(exits.map(({ equipment }) => equipment)).toEqual([source.id]);
  const [{ at, beyond }] = exits as [(typeof exits)[number]];
  expect(at[0]).toBeCloseTo(0, 9);
  const { to } = links[0]!;
  const whole = Math.hypot(to[0] - source.at[0], to[1] - source.at[1]);
  expect(beyond).toBeCloseTo((whole * 50) / (to[0] - source.at[0]), 9);
});

test('nothing is told where both ends are in view, nor where neither is', () => {
  expect(feederExits(view(-2000, -2000, 2000, 2000), scene.feeders.items)).toEqual([]);
  const [link] = scene.feeders.items;
  const [x, y] = [(link!.from[0] + link!.to[0]) / 2, (link!.from[1] + link!.to[1]) / 2];
  expect(feederExits(view(x - 5, y - 5, x + 5, y + 5), [link!])).toEqual([]);
});
