import type { Drop, Raceway } from '../../routing/site/site.ts';
import { kindOf } from './kind.ts';
import { type Tally, tallying } from './tally.ts';
import { trenches } from './trench.ts';

const BOLLARD = kindOf({
  item: 'bollard',
  spec: 'at a pedestal',
  unit: 'each',
  basis: 'two at each pedestal; common practice, no source',
});
const CORE_DRILL = kindOf({
  item: 'core drill',
  spec: 'through paving',
  unit: 'each',
  basis: 'one where an underground raceway comes up through grade',
});
const BOLLARDS = 2;

/** What is dug, drilled and set in the ground: trenches by surface and depth, core drills, bollards at pedestals. */
export function groundQuantities(raceways: readonly Raceway[], drops: readonly Drop[]): Tally {
  const { add, tally } = tallying();
  for (const { raceway, surface, depth, length } of trenches(raceways)) {
    const spec = `${surface}, ${Math.round(depth * 12)} in deep`;
    add(
      kindOf({
        item: 'trench',
        spec,
        unit: 'ft',
        basis: 'plan length of underground raceways; those that share a trench counted once',
      }),
      raceway,
      length,
    );
  }
  for (const { id, path, place } of raceways) {
    if (place !== 'underground') continue;
    const rises = path.slice(1).filter((b, i) => {
      const a = path[i] as readonly number[];
      return (a[2] as number) < 0 !== b[2] < 0;
    }).length;
    add(CORE_DRILL, id, rises);
  }
  for (const { id, mount } of drops) if (mount === 'pedestal') add(BOLLARD, id, BOLLARDS);
  return tally;
}
