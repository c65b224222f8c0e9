import { copied } from '../../routing/kept/changed-places.ts';
import { chargersMoved, type Hanging, hangingOf } from '../../routing/site/hanging.ts';
import type { Charger, Drop } from '../../routing/site/site.ts';

interface Known {
  readonly hanging: Hanging;
  readonly of: readonly Drop[];
}

const memory = new WeakMap<readonly Charger[], Known>();

/**
 * The drop of each charger, in the order of the chargers. While drops move and keep their places in the list, the last
 * answer with the moved ones changed. RangeError for a charger at a drop that is not there.
 */
export function dropsOf(chargers: readonly Charger[], drops: readonly Drop[]): readonly Drop[] {
  const hanging = hangingOf(chargers, drops);
  const known = memory.get(chargers);
  const moved = known === undefined ? null : chargersMoved(hanging, known.hanging);
  let of = known?.of ?? [];
  if (known === undefined || moved === null) of = chargers.map((charger, i) => dropOf(charger, hanging, i));
  else if (moved.length > 0) {
    const copy = known.of.slice();
    for (const i of moved) copy[i] = drops[hanging.at[i]!]!;
    of = copied(copy, known.of, moved);
  }
  memory.set(chargers, { hanging, of });
  return of;
}

function dropOf({ id, drop }: Charger, { drops, at }: Hanging, i: number): Drop {
  if (at[i]! < 0) throw new RangeError(`charger ${id} is at drop ${drop}, which is not there`);
  return drops[at[i]!]!;
}
