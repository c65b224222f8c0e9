import { describe, expect, test } from 'vitest';
import { LAYERS } from '../../../calc/sheets/drawing/layers.ts';
import { raisedDrawing } from '../../../calc/sheets/drawing/raised-drawing.ts';
import { feedersInPlan } from '../../../calc/sheets/pdf/plans/feeders-on-plan.ts';
import { svg } from '../../../calc/sheets/svg/svg.ts';
import { vehicleBlock } from '../../../calc/space/block.ts';
import { seenBlock } from '../../../calc/space/oblique.ts';
import type { Point2 } from '../../../routing/site/site.ts';
import { vehicleOf } from '../../../routing/standing/parked.ts';
import { plannedSample } from '../../outside/sheets/planned-samples.ts';

/** Deeper inside a convex outline than a rounding, by the side of each of its edges. */
const inside = ([x, y]: Point2, outline: readonly Point2[]): boolean =>
  outline.every(([ax, ay], i) => {
    const [bx, by] = outline[(i + 1) % outline.length]!;
    return (bx - ax) * (y - ay) - (by - ay) * (x - ax) > 1e-3;
  });

describe.each(['library-lot', 'fleet-yard'])('%s raised', (name) => {
  const { site, planned } = plannedSample(name);
  const { items } = raisedDrawing(site, planned);

  test('every box and retractor stands above its place in plan by its elevation', () => {
    const symbols = items.flatMap((item) => (item.kind === 'symbol' && item.layer === 'drops' ? [item] : []));
    for (const { id, box, retractor } of site.drops)
      for (const [symbol, at] of [['box', box] as const, ['retractor', retractor!] as const])
        expect(symbols).toContainEqual(
          expect.objectContaining({ of: id, symbol, at: [at[0], at[1] + at[2]], z: at[2] }),
        );
  });

  test('every leg of a raceway is drawn at its elevation, underground ones below', () => {
    const drawn = new Set(
      items.flatMap((item) =>
        item.kind === 'line' && (item.layer === 'raceways' || item.layer === 'underground')
          ? [JSON.stringify(item.points)]
          : [],
      ),
    );
    for (const { path } of site.raceways) expect(drawn).toContain(JSON.stringify(path.map(([x, y, z]) => [x, y + z])));
  });

  test('feeders whose way the site does not give go straight from entry to entry', () => {
    const drawn = items.flatMap((item) =>
      item.kind === 'line' && /^(feeders|existingFeeders)$/.test(item.layer) ? [item.points] : [],
    );
    const entries = new Map(site.equipment.map(({ id, entry: [x, y, z] }) => [id, [x, y + z]]));
    const straight = feedersInPlan(site).filter(({ isRouted }) => !isRouted);
    expect(straight.length).toBeGreaterThan(0);
    expect(drawn).toEqual(straight.map(({ feeder: { from, to } }) => [entries.get(from), entries.get(to)]));
  });

  test('no stripe of the ground is drawn where a car hides it, and some stripes are hidden', () => {
    const covers = site.stalls.map(
      (stall) => seenBlock(vehicleBlock(stall, vehicleOf(stall, site), site.rules.headClearance)).silhouette,
    );
    let feet = 0;
    for (const item of items) {
      if (item.kind !== 'line' || item.layer !== 'stalls') continue;
      const [a, b] = item.points as [Point2, Point2];
      feet += Math.hypot(b[0] - a[0], b[1] - a[1]);
      for (const t of [0.1, 0.5, 0.9]) {
        const at: Point2 = [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
        expect(covers.some((cover) => inside(at, cover))).toBe(false);
      }
    }
    const all = site.stalls.reduce((sum, { width, depth }) => sum + 2 * (width + depth), 0);
    expect(feet).toBeLessThan(0.95 * all);
    expect(feet).toBeGreaterThan(0.2 * all);
  });

  test('feeders whose way is not drawn are thin and grey where they exist, as on the plans', () => {
    const straight = site.feeders.filter(({ length }) => length !== undefined);
    for (const feeder of straight) {
      const existing = feeder.existing === true;
      const { items: own } = raisedDrawing({ ...site, feeders: [feeder] }, planned);
      const layers = own.filter(({ layer }) => /feeders/i.test(layer)).map(({ layer }) => LAYERS[layer]);
      expect(layers.map(({ name, colour }) => [name, colour])).toEqual([
        existing ? ['E-POWR-FEED-E', LAYERS.stalls.colour] : ['E-POWR-FEED', LAYERS.equipment.colour],
      ]);
      expect(layers[0]!.weight).toBe(existing ? 0.18 : 0.35);
    }
    expect(new Set(straight.map(({ existing = false }) => existing)).size).toBe(2);
  });

  test('it is written as SVG with its layers', () => {
    const written = svg(raisedDrawing(site, planned));
    expect(written).toMatch(/<g id="E-POWR-FEED"[^>]*stroke-dasharray/);
    for (const layer of ['S-FRAM', 'C-PKNG-VHCL', 'E-POWR-CORD', 'E-POWR-DROP'])
      expect(written).toContain(`<g id="${layer}"`);
  });
});
