import type { Raceway } from '../../routing/site/site.ts';
import { kindOf } from './kind.ts';
import { type Tally, tallying } from './tally.ts';
import { trenches } from './trench.ts';

const CORE_DRILL = kindOf({
  item: 'core drill',
  spec: 'through paving',
  unit: 'each',
  basis: 'one where an underground raceway comes up through grade',
});
/** What is dug and drilled: trenches by surface and depth, core drills. */
export function groundQuantities(raceways: readonly Raceway[]): Tally {
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
  return tally;
}
