import { expect, test } from 'vitest';
import { USUAL_DROP } from '../../../calc/propose/usual.ts';
import { proposeDrops } from '../../../routing/propose/drops/propose-drops.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { fewestByProgram, randomLot, reachedOnGrid } from './random-lots.ts';

const { cord, retractorBelow, elevation } = USUAL_DROP;

/** Cords to a drop on each of the lots in turn. */
const HOLDS = [2, 4, 6, 2, 4];

// Places of a grid of a foot, all over the lot: those that proposals look at are not the measure.
test.each(Array.from({ length: 20 }, (_, i) => i + 1))(
  'lot %i has the fewest drops that any places allow',
  async (seed) => {
    const site = toSite(randomLot(seed));
    const holds = HOLDS[seed % HOLDS.length]!;
    const { drops, without, bound } = proposeDrops(site, { cord, retractorBelow, elevation, holds });
    const sets = reachedOnGrid(site, 1, elevation, cord);
    const served = new Set(sets.flat());
    expect(drops.flatMap(({ stalls }) => stalls)).toHaveLength(site.stalls.length - without.length);
    expect(without.length).toBeLessThanOrEqual(site.stalls.length - served.size);
    const stalls = [...served].filter((s) => !without.some(({ stall }) => stall === site.stalls[s]!.id));
    const fewest = await fewestByProgram(stalls, sets, holds);
    expect(drops.length).toBeLessThanOrEqual(fewest);
    expect(bound).toBeLessThanOrEqual(drops.length);
  },
);
