import { kept } from '../../kept/kept.ts';
import { type Box, boxOf } from '../../plane/box.ts';
import { type Hosted, keptHosts } from '../../plane/kept-hosts.ts';
import { overlapDepth } from '../../plane/overlap-depth.ts';
import { printLength } from '../../site/numbers/feet-inches.ts';
import { stallRectangle } from '../../site/place/stall-rectangle.ts';
import type { Finding } from '../../site/rules/finding.ts';
import type { RuleWord } from '../../site/rules/rule-words.ts';
import type { Units } from '../../site/schema/vocabulary.ts';
import type { Column, Raceway, Site, Stall } from '../../site/site.ts';
import { stallIndex } from '../../standing/outlines.ts';
import { lengthInPlaceOf } from './laid-along.ts';
import { columnOutline, lieInEachOther, TOUCHING } from './lies-in.ts';
import { standingFindings } from './standing-findings.ts';
import { fewNamed, toldOverlaps } from './told-overlaps.ts';

/** Raceways laid in one place for no longer than this, feet, only meet. Common practice, no source. */
const MEETING = 1;

/**
 * What lies on what: `stalls-overlap` of stalls on stalls, `overlap` of columns on columns and of equipment on other
 * equipment, on columns or in stalls, `raceways-overlap` of raceways laid twice. Edges that touch do not overlap. One
 * finding for each thing that others lie on, with how many there are, and one for all places past the fiftieth.
 */
export function overlapFindings(site: Site): readonly Finding[] {
  const { stalls, columns, raceways, units } = site;
  return [
    ...stallsOnStalls(stallHosts(stalls).told, units),
    ...columnsOnColumns(columnHosts(columns).told, units),
    ...standingFindings(site),
    ...racewaysOnRaceways(racewayHosts(raceways).told, units),
  ];
}

const stallHosts = keptHosts<Stall>(
  (stall) => boxOf(stallRectangle(stall)),
  (a, b) => lieInEachOther(stallRectangle(a), stallRectangle(b)),
  ({ at, width, depth, heading }) => [at[0], at[1], width, depth, heading],
  TOUCHING,
  stallIndex,
);

const columnHosts = keptHosts<Column>(
  (column) => boxOf(columnOutline(column)),
  (a, b) => lieInEachOther(columnOutline(a), columnOutline(b)),
  ({ at, size, rotation = 0 }) => [at[0], at[1], size[0], size[1], rotation],
  TOUCHING,
);

const racewayHosts = keptHosts<Raceway>(
  ({ path }): Box => boxOf(path),
  (a, b) => lengthInPlaceOf(a.path, b.path) > MEETING,
  ({ path }) => path.flat(),
  0,
);

interface Words<T> {
  readonly rule: RuleWord;
  readonly severity: Finding['severity'];
  readonly what: string;
  /** What one does, and what several do. */
  readonly on: readonly [string, string];
  /** How far one lies on another, feet, with the words for it. */
  readonly by: (host: T, guest: T) => number;
  readonly byWords: (length: string) => string;
  readonly limit: number;
  readonly cure: string;
}

const told = <T extends { readonly id: string }>(words: Words<T>) =>
  kept((hosts: Hosted<T>, units: Units): readonly Finding[] => {
    const list = hosts.items;
    const { rule, severity, what, on, by, byWords, limit, cure } = words;
    const ids = (places: readonly number[]): string[] => places.map((place) => list[place]!.id);
    const base = { severity, rule, source: 'common practice, no source' } as const;
    return toldOverlaps(
      hosts,
      (host, guests) => {
        const one = list[host]!;
        const far = Math.max(...guests.slice(0, 100).map((guest) => by(one, list[guest]!)));
        const length = byWords(printLength(far, units));
        return {
          ...base,
          about: [...ids(guests), one.id],
          says:
            guests.length > 1
              ? `${guests.length} ${what}s ${on[1]} ${one.id}, ${length}: ${fewNamed(ids(guests))}. ${cure}`
              : `${list[guests[0]!]!.id} ${on[0]} ${one.id}, ${length}. ${cure}`,
          value: far,
          limit,
          unit: 'ft',
        };
      },
      (guests, places) => ({
        ...base,
        about: ids(guests),
        says: `And ${guests.length} more ${what}s ${on[1]} others, at ${places} more places.`,
        value: guests.length,
      }),
    );
  });

const stallsOnStalls = told<Stall>({
  rule: 'stalls-overlap',
  severity: 'fail',
  what: 'stall',
  on: ['lies on', 'lie on'],
  by: (a, b) => overlapDepth(stallRectangle(a), stallRectangle(b)),
  byWords: (length) => `${length} into it`,
  limit: TOUCHING,
  cure: 'Move one, or delete the copy.',
});

const columnsOnColumns = told<Column>({
  rule: 'overlap',
  severity: 'fail',
  what: 'column',
  on: ['stands on', 'stand on'],
  by: (a, b) => overlapDepth(columnOutline(a), columnOutline(b)),
  byWords: (length) => `${length} into it`,
  limit: TOUCHING,
  cure: 'Two columns cannot be in one place: move one, or delete the copy.',
});

const racewaysOnRaceways = told<Raceway>({
  rule: 'raceways-overlap',
  severity: 'warn',
  what: 'raceway',
  on: ['is laid along', 'are laid along'],
  by: (a, b) => lengthInPlaceOf(a.path, b.path),
  byWords: (length) => `in its place over ${length}`,
  limit: MEETING,
  cure: 'One raceway holds all the conduits of its way: delete the copy, or lay it beside.',
});
