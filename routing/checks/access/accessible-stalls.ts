import { kept } from '../../kept/kept.ts';
import type { AccessibleBy } from '../../site/schema/vocabulary.ts';
import type { Aisle, Charger, Stall } from '../../site/site.ts';
import { aisleBeside } from './aisle-beside.ts';
import {
  ACCESS_STANDARDS,
  type AccessibleSize,
  type AccessibleUse,
  ADA_SIZES,
  ADA_SOURCE,
  NARROW_VAN,
} from './standards.ts';

/** How many accessible stalls a standard asks for among those with a charger, and how many there are. */
export interface AskedCount {
  readonly standard: Exclude<AccessibleBy, 'none'>;
  readonly use: AccessibleUse;
  /** What is counted: stalls served, or vehicles that can charge at once. */
  readonly of: number;
  readonly asked: number;
  /** Stalls of this use, or of a better one that is not needed for its own count. */
  readonly given: number;
  readonly source: string;
  /** The same as a drawing names it. */
  readonly basis: string;
}

/** An accessible stall with a charger: its sizes beside those asked, feet. */
export interface AccessibleStall {
  readonly stall: Stall;
  readonly use: AccessibleUse;
  /** Of an access aisle beside it; 0 where none is drawn. */
  readonly aisle: number;
  readonly asked: AccessibleSize;
  readonly source: string;
  /** The same as a drawing names it. */
  readonly basis: string;
  /** Narrower or shorter than the least that any accessible stall is. */
  readonly underAda: boolean;
}

export interface AccessibleTable {
  readonly counts: readonly AskedCount[];
  readonly stalls: readonly AccessibleStall[];
}

const USES: Readonly<Record<NonNullable<Stall['use']>, AccessibleUse | null>> = {
  standard: null,
  accessible: 'standard',
  'van-accessible': 'van',
  ambulatory: 'ambulatory',
};

/** How a stall is accessible; null where it is not. */
export const accessibleUse = ({ use = 'standard' }: Pick<Stall, 'use'>): AccessibleUse | null => USES[use];

/**
 * Accessible stalls with a charger, asked and given: counts by each standard that is held, sizes by the one that the site
 * chooses, else by the least of the ADA Standards. Feet.
 */
export const accessibleTable = kept(
  (
    stalls: readonly Stall[],
    aisles: readonly Aisle[],
    chargers: readonly Charger[],
    by: AccessibleBy,
  ): AccessibleTable => {
    const served = new Set(chargers.flatMap((charger) => charger.stalls));
    const own = stalls.filter((stall) => accessibleUse(stall) !== null && served.has(stall.id));
    const busy = chargers.filter((charger) => charger.stalls.length > 0).length;
    const totals = { stalls: served.size, vehicles: Math.min(served.size, busy) };
    const counts = Object.entries(ACCESS_STANDARDS).flatMap(
      ([name, { asked, counts: of, countSource, countBasis }]) => {
        const wanted = asked(totals[of]);
        const given = sharedOut(own, wanted);
        return (['van', 'standard', 'ambulatory'] as const).flatMap((use): AskedCount[] =>
          wanted[use] === 0 && !(totals[of] > 0 && use === 'standard')
            ? []
            : [
                {
                  standard: name as AskedCount['standard'],
                  use,
                  of: totals[of],
                  asked: wanted[use],
                  given: given[use],
                  source: countSource,
                  basis: countBasis,
                },
              ],
        );
      },
    );
    return { counts, stalls: own.map((stall) => sized(stall, aisles, by)) };
  },
);

/** A van stall serves a car too, and both serve a person who walks with a cane. */
function sharedOut(
  own: readonly Stall[],
  asked: Readonly<Record<AccessibleUse, number>>,
): Readonly<Record<AccessibleUse, number>> {
  const count = (use: AccessibleUse): number => own.filter((stall) => accessibleUse(stall) === use).length;
  const van = count('van');
  const standard = count('standard') + Math.max(0, van - asked.van);
  const ambulatory = count('ambulatory') + Math.max(0, standard - asked.standard);
  return { van, standard, ambulatory };
}

function sized(stall: Stall, aisles: readonly Aisle[], by: AccessibleBy): AccessibleStall {
  const use = accessibleUse(stall)!;
  const aisle = aisleBeside(stall, aisles);
  const least = ADA_SIZES[use];
  const narrow = use === 'van' && aisle >= NARROW_VAN - SLACK ? NARROW_VAN : least.width;
  const chosen = by === 'none' ? null : ACCESS_STANDARDS[by];
  return {
    stall,
    use,
    aisle,
    asked: chosen?.sizes[use] ?? { ...least, width: narrow },
    source: chosen?.sizeSource ?? ADA_SOURCE,
    basis: chosen?.sizeBasis ?? ADA_SOURCE,
    underAda: stall.width < narrow - SLACK,
  };
}

/** So much less than the least size, feet, is a slip of the drawing. */
export const SLACK = 0.02;
