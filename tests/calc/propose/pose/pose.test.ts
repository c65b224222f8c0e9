import { describe, expect, test } from 'vitest';
import { plan } from '../../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../../calc/prices/invented-list.ts';
import { propose } from '../../../../calc/propose/propose.ts';
import { costOf } from '../../../../calc/takeoff/bid/cost.ts';
import { steadyNumbers } from '../../../../routing/propose/shared/steady-numbers.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { boundaryDistance } from '../../../../routing/standing/boundary-distance.ts';
import { doubleRows } from '../hand/lots.ts';
import { lying, renumbered } from './lying.ts';

/** A seeded lot of few stalls, uneven, its source anywhere west of it. */
function lot(seed: number): SiteFile {
  const random = steadyNumbers(seed);
  const along = 3 + Math.floor(3 * random());
  const ground = doubleRows({ along, canopies: 1, volts: 208, away: 20 + Math.round(40 * random()) });
  const gone = new Set([0, 1].map(() => Math.floor(random() * ground.stalls!.length)));
  return { ...ground, stalls: ground.stalls!.filter((_, i) => !gone.has(i)) };
}

const proposed = (file: SiteFile, answers = 0) =>
  propose(file, { what: 'all', cordsADrop: 1, prices: INVENTED_LIST, isBounded: answers > 0, answers });

/** What a proposal comes to on the lot as it lies: dollars and feet to the cent and the hundredth, and what fails. */
function figures({ file, dollars }: ReturnType<typeof proposed>) {
  const { findings, takeoff } = plan(toSite(file));
  const { cost, price } = costOf(takeoff, INVENTED_LIST, 0);
  // What a proposal is told to come to is its bid.
  expect(Math.abs(price - dollars!)).toBeLessThan(0.02);
  const feet = takeoff.filter(({ unit }) => unit === 'ft').reduce((sum, { quantity }) => sum + quantity, 0);
  return {
    dollars: cost.toFixed(2),
    feet: feet.toFixed(2),
    fails: findings.filter(({ severity }) => severity === 'fail').length,
  };
}

const LAID = [0, 90, 180, 270].flatMap((degrees) => [false, true].map((mirrors) => ({ degrees, mirrors })));

describe.each([1, 2])('lot %i', (seed) => {
  const ground = lot(seed);
  const drawn = figures(proposed(ground));

  test('turned by quarters, mirrored, renamed and drawn in another order has the same proposal, to the cent', () => {
    expect(drawn.fails).toBe(0);
    for (const [i, { degrees, mirrors }] of LAID.entries())
      expect(figures(proposed(renumbered(lying(ground, degrees, mirrors), 10 * seed + i)))).toEqual(drawn);
  });

  test('turned by any angle too, as far as what is drawn to a millionth of a foot lets it', () => {
    for (const degrees of [17, 33.3]) {
      const turned = figures(proposed(renumbered(lying(ground, degrees, seed === 2), seed)));
      expect(turned.fails).toBe(0);
      expect(Math.abs(Number(turned.dollars) / Number(drawn.dollars) - 1)).toBeLessThan(0.001);
    }
  });
});

test('nor does it matter to the search by what is paid', () => {
  const ground = lot(1);
  const turned = renumbered(lying(ground, 180, true), 4);
  expect(figures(proposed(turned, 15))).toEqual(figures(proposed(ground, 15)));
});

test('what is new is turned back onto the lot, and named in the order of the stalls', () => {
  const ground = lot(2);
  const turned = lying(ground, 270, false);
  const { file } = proposed(turned);
  expect(file.stalls).toBe(turned.stalls);
  const order = file.stalls!.map(({ id }) => id);
  const named = [...file.chargers!]
    .sort((a, b) => (a.id < b.id ? -1 : 1))
    .map(({ stalls }) => order.indexOf(stalls[0]!));
  expect(named).toEqual([...named].sort((a, b) => a - b));
  for (const { drop, stalls } of file.chargers!) {
    const [x, y] = file.drops!.find(({ id }) => id === drop)!.box;
    const [sx, sy] = file.stalls!.find(({ id }) => id === stalls[0])!.at;
    expect(Math.hypot(x - sx, y - sy)).toBeLessThan(25);
  }
});

test('new equipment keeps the setback of a boundary, however the lot lies', () => {
  const ground = lot(1);
  const [x, y] = proposed(ground).file.equipment!.find(({ kind }) => kind === 'panelboard')!.at;
  // Along the panel that would stand there.
  const path: [number, number][] = [
    [x, y - 200],
    [x, y + 200],
  ];
  const bounded: SiteFile = { ...ground, boundaries: [{ id: 'BL1', path, setback: 6 }] };
  for (const { degrees, mirrors } of [LAID[0]!, LAID[3]!, LAID[6]!]) {
    const { file } = proposed(lying(bounded, degrees, mirrors));
    const panels = toSite(file).equipment.filter(({ kind }) => kind === 'panelboard');
    expect(panels.length).toBeGreaterThan(0);
    for (const panel of panels)
      expect(boundaryDistance(panel, toSite(file).boundaries[0]!).feet).toBeGreaterThanOrEqual(6 - 1e-6);
  }
});
