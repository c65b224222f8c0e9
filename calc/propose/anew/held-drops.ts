import { byId } from '../../../routing/site/look-up.ts';
import type { Site, SiteFile } from '../../../routing/site/site.ts';
import type { Alternative } from '../../plan/compared/comparison.ts';
import type { PriceList } from '../../prices/price-list.ts';
import { withDropHeld } from '../volts/hold-drop.ts';
import type { Broken } from './broken.ts';

/** Larger conductors with which the drop is within its limit again, and what they are, in a sentence. */
interface HeldDrop {
  readonly file: SiteFile;
  readonly says: string;
}

/**
 * Where broken chargers see more than the limit of drop: larger conductors of their branches; and of these together with
 * the feeders ahead of them, whichever is cheaper. None where the drop is not over, or nothing of the tables cures it.
 */
export function heldDrops(
  file: SiteFile,
  { site, plan }: Pick<Alternative, 'site' | 'plan'>,
  { chargers }: Broken,
  prices: PriceList,
): readonly HeldDrop[] {
  const broken = new Set(chargers);
  const over = plan.findings.filter(({ rule, about }) => rule === 'total-drop' && about.some((id) => broken.has(id)));
  if (over.length === 0) return [];
  const ahead = over.flatMap(({ about }) => feedersTo(site, about.at(-1)!));
  const grown = [chargers, [...chargers, ...ahead]].map((fresh) => withDropHeld(file, new Set(fresh), prices));
  return grown.flatMap(({ file: next, widened, limited }, i) => {
    const isBranches = limited.size > 0;
    if (widened.length === 0 && (i > 0 || !isBranches)) return [];
    const branches = isBranches
      ? [
          `the branches of ${chargers.length === 1 ? chargers[0] : `${chargers.length} chargers`}, held to a drop of ${[...new Set(limited.values())].join('% and ')}%`,
        ]
      : [];
    return [{ file: next, says: `Larger conductors of ${[...widened, ...branches].join(' and ')}.` }];
  });
}

/** Ids of the feeders on the way to a piece of equipment. */
function feedersTo({ feeders }: Site, equipment: string): readonly string[] {
  const into = byId(feeders.map((one) => ({ ...one, id: one.to, feeder: one.id })));
  const way: string[] = [];
  for (let at = into.get(equipment); at !== undefined && !way.includes(at.feeder); at = into.get(at.from))
    way.push(at.feeder);
  return way;
}
