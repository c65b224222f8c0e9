import { kept } from '../../kept/kept.ts';
import { chunking } from '../../kept/parts.ts';
import { indexing, positionsIn } from '../../plane/box-index.ts';
import { insideOf } from '../../plane/obstacle.ts';
import type { Finding } from '../../site/rules/finding.ts';
import type { Aisle, Column, Drop, Site, Stall } from '../../site/site.ts';
import { outlineOf, stallsIn } from '../../standing/outlines.ts';
import { counted } from '../../words/counted.ts';

/** A column no higher than this is a bollard, feet. Common practice, no source. */
const BOLLARD = 5;
/** A bollard guards what it stands no farther from than this, feet. Common practice, no source. */
const GUARDS = 4;

/** The columns that are bollards: too low to carry anything. */
export const isBollard = ({ height }: Pick<Column, 'height'>): boolean => height !== undefined && height <= BOLLARD;

const bollardsBy = indexing<Column>(({ at: [x, y] }) => ({ minX: x, minY: y, maxX: x, maxY: y }));

/** The bollards that guard a pedestal. */
export function bollardsNear({ box: [x, y] }: Pick<Drop, 'box'>, bollards: readonly Column[]): readonly Column[] {
  if (bollards.length === 0) return bollards;
  const around = { minX: x - GUARDS, minY: y - GUARDS, maxX: x + GUARDS, maxY: y + GUARDS };
  return positionsIn(bollardsBy(bollards), around)
    .map((i) => bollards[i]!)
    .filter(({ at }) => Math.hypot(at[0] - x, at[1] - y) <= GUARDS);
}

const dropChunks = chunking<Drop>(128);
const NO_DROPS: readonly Drop[] = [];
const pedestalsOf = kept((chunk: readonly Drop[]): readonly Drop[] => {
  const own = chunk.filter(({ mount }) => mount === 'pedestal');
  return own.length === 0 ? NO_DROPS : own;
});
const joined = kept((lists: readonly (readonly Drop[])[]): readonly Drop[] => lists.flat());

/** The drops that are pedestals, looked for only among drops that are new: the same list as long as they are the same. */
export const pedestalsAmong = (drops: readonly Drop[]): readonly Drop[] =>
  joined(dropChunks(drops).map((chunk) => pedestalsOf(chunk)));

const bollardsAmong = kept((columns: readonly Column[]): readonly Column[] => columns.filter(isBollard));

/** What guards what on a site. */
export const guarded = ({ drops, columns }: Pick<Site, 'drops' | 'columns'>) => ({
  pedestals: pedestalsAmong(drops),
  bollards: bollardsAmong(columns),
});

/**
 * `pedestal-guard`: pedestals in or beside stalls and drive aisles by which no bollard is drawn, told together; bollards
 * and pedestals that stand in an access aisle, which is kept clear.
 */
export function guardFindings(site: Site): readonly Finding[] {
  const { aisles, stalls } = site;
  const { pedestals, bollards } = guarded(site);
  return pedestals.length + bollards.length === 0 ? [] : found(pedestals, bollards, aisles, stalls);
}

const found = kept(
  (
    pedestals: readonly Drop[],
    bollards: readonly Column[],
    aisles: readonly Aisle[],
    stalls: readonly Stall[],
  ): readonly Finding[] => {
    const access = aisles.filter(({ kind }) => kind === 'access');
    const standing = [
      ...pedestals.map(({ id, box }) => ({ id, what: 'pedestal', x: box[0], y: box[1] })),
      ...bollards.map(({ id, at }) => ({ id, what: 'bollard', x: at[0], y: at[1] })),
    ];
    const inAisle = standing.flatMap(({ id, what, x, y }): Finding[] => {
      const aisle = access.find((one) => insideOf(outlineOf(one), x, y));
      if (aisle === undefined) return [];
      return [
        {
          severity: 'fail',
          rule: 'pedestal-guard',
          about: [id, aisle.id],
          says: `The ${what} ${id} stands in the access aisle ${aisle.id}, which is kept clear. Move it out, beside the head of the stall.`,
          source: '2010 ADA Standards 502.3, 302',
        },
      ];
    });
    const bare = pedestals.filter((one) => bollardsNear(one, bollards).length === 0 && isDrivenBy(one, stalls, aisles));
    if (bare.length === 0) return inAisle;
    return [
      ...inAisle,
      {
        severity: 'note',
        rule: 'pedestal-guard',
        about: bare.map(({ id }) => id),
        says: `No bollard is drawn by ${bare.length === 1 ? `the pedestal ${bare[0]!.id}` : counted(bare.length, 'pedestal')}: two each are taken off. Draw them as columns of 5 ft or lower, in front of the pedestal, 3 ft clear between them where a person passes, and outside of access aisles; or set wheel stops so that no bumper comes to it.`,
        value: bare.length,
        limit: 0,
        source: 'common practice, no source; 3 ft past bollards by the recommendations of the US Access Board',
      },
    ];
  },
);

/** A vehicle can come to it: it stands in a stall or a drive aisle, or no farther off than a bumper hangs over. */
function isDrivenBy({ box: [x, y] }: Drop, stalls: readonly Stall[], aisles: readonly Aisle[]): boolean {
  const reach = GUARDS;
  const near = { minX: x - reach, minY: y - reach, maxX: x + reach, maxY: y + reach };
  if (stallsIn(stalls, near).length > 0) return true;
  return aisles.some((one) => one.kind !== 'walk' && one.kind !== 'access' && insideOf(outlineOf(one), x, y));
}
