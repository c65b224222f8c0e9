import { newIds } from '../../../routing/site/new-id.ts';
import type { Charger, Drop, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { counted } from '../../../routing/words/counted.ts';
import { alternativeOf } from '../../plan/compared/alternative.ts';
import type { PriceList } from '../../prices/price-list.ts';
import { withChargers } from '../drops/chargers.ts';
import { type CordToCome, dropsPart } from '../drops/drops-part.ts';
import { failsOf } from '../forced-words.ts';
import type { ProposalPart } from '../part.ts';
import { racewaysPart } from '../raceways/raceways-part.ts';
import { type Cleared, cleared } from './cleared.ts';
import type { Scope } from './scope.ts';

/** What of a scope may be proposed anew: panels stay. */
export const ANEW_WHATS = ['drops', 'raceways', 'all'] as const;
export type AnewWhat = (typeof ANEW_WHATS)[number];

export interface AnewWish {
  readonly what: AnewWhat;
  readonly scope: Scope;
  /** Ids of what stays as it is, in the scope too. */
  readonly keep: ReadonlySet<string>;
  readonly cordsADrop: number;
  readonly prices: PriceList;
}

/** A part of a lot proposed anew. */
export interface ProposedAnew {
  readonly file: SiteFile;
  readonly parts: readonly ProposalPart[];
  /** What the lot fails and costs with it, and did before; dollars of the bid. */
  readonly after: Figures;
  readonly before: Figures;
}

export interface Figures {
  readonly fails: number;
  readonly price: number;
}

/** What a file fails, and its bid. */
export function failsAndBid(file: SiteFile, prices: PriceList): Figures {
  const { plan: planned, cost } = alternativeOf('', toSite(file), prices);
  return { fails: failsOf(planned.findings).length, price: cost.price };
}

/**
 * A part of a lot proposed anew: what only it has is taken away and drawn again, drops for its stalls, ways for its
 * chargers, or both. Chargers keep their names, ratings, panels and places in their list; everything outside stays as it
 * is drawn, and so does what is kept. Where a stall of it could not be served again, its drop stays as well.
 */
export function proposeAnew(
  file: SiteFile,
  { what, scope, keep, cordsADrop, prices }: AnewWish,
  tell: (done: number, of: number) => void = () => {},
  mayGoOn: () => boolean = () => true,
): ProposedAnew {
  const before = failsAndBid(file, prices);
  const { file: hung, parts, added, raceways } = hungAnew(file, what, scope, keep, cordsADrop);
  if (what === 'drops') return { file: hung, parts, before, after: failsAndBid(hung, prices) };
  const only = new Set([...scope.chargers, ...added]);
  const { file: laid, part } = racewaysPart(hung, prices, tell, mayGoOn, { ...(only && { only }), answers: 0 });
  const says = [
    ...(raceways > 0
      ? [`${counted(raceways, 'raceway')} in which only its circuits lay ${raceways === 1 ? 'goes' : 'go'}.`]
      : []),
    ...part.says,
  ];
  return { file: laid, parts: [...parts, { ...part, says }], before, after: failsAndBid(laid, prices) };
}

interface Hung {
  readonly file: SiteFile;
  readonly parts: readonly ProposalPart[];
  /** Chargers of stalls that had none. */
  readonly added: readonly string[];
  /** So many raceways went. */
  readonly raceways: number;
}

/** A scope cleared, and drops for its stalls hung anew where they are asked for, with their chargers. */
function hungAnew(file: SiteFile, what: AnewWhat, scope: Scope, keep: ReadonlySet<string>, cordsADrop: number): Hung {
  const kept = new Set(keep);
  for (;;) {
    const clear = cleared(file, scope, { drops: what !== 'raceways', raceways: what !== 'drops' }, kept);
    const raceways = clear.raceways.size;
    if (what === 'raceways') return { file: clear.file, parts: [], added: [], raceways };
    const { file: next, cords, part } = dropsPart(clear.file, cordsADrop, scope.stalls);
    const given = new Set(cords.map(({ stall }) => stall));
    const lost = clear.chargers.filter(({ stalls }) => !given.has(stalls[0]!));
    if (lost.length > 0) {
      for (const { drop } of lost) kept.add(drop);
      continue;
    }
    const { file: named, cords: own } = underOldNames(file, clear, next, cords);
    const { file: charged, added } = withTheirChargers(file, named, clear, own);
    return { file: charged, parts: [{ ...part, says: [...part.says, ...wentWords(clear)] }], added, raceways };
  }
}

const wentWords = ({ drops }: Cleared): readonly string[] =>
  drops.size === 0 ? [] : [`${counted(drops.size, 'drop')} of before ${drops.size === 1 ? 'goes' : 'go'}.`];

/** New drops under the names, and in the places in the list, of those that went where they are for the same stalls. */
function underOldNames(
  file: SiteFile,
  { chargers, drops: gone, file: bare }: Cleared,
  hung: SiteFile,
  cords: readonly CordToCome[],
): { readonly file: SiteFile; readonly cords: readonly CordToCome[] } {
  const fresh = (hung.drops ?? []).slice(bare.drops?.length ?? 0);
  if (fresh.length === 0) return { file: hung, cords };
  const wasAt = new Map(chargers.map(({ drop, stalls }) => [stalls[0]!, drop]));
  const free = new Set(gone);
  const more = newIds(file, 'D', fresh.length);
  const names = new Map<string, string>();
  for (const [i, { id }] of fresh.entries()) {
    const old = cords.flatMap(({ drop, stall }) => (drop === id ? [wasAt.get(stall)] : []));
    const name = old.find((one) => one !== undefined && free.has(one)) ?? more[i]!;
    free.delete(name);
    names.set(id, name);
  }
  const renamed = new Map(fresh.map((drop) => [names.get(drop.id)!, { ...drop, id: names.get(drop.id)! }]));
  const inPlace = (file.drops ?? []).flatMap((drop) => {
    const now = renamed.get(drop.id);
    renamed.delete(drop.id);
    if (now !== undefined) return [isSame(now, drop) ? drop : now];
    return gone.has(drop.id) ? [] : [drop];
  });
  const placeOf = new Set(fresh.map(({ id }) => id));
  return {
    file: { ...hung, drops: [...inPlace, ...renamed.values()] },
    cords: cords.map((cord) => (placeOf.has(cord.drop) ? { ...cord, drop: names.get(cord.drop)! } : cord)),
  };
}

const isSame = (a: Drop, b: Drop): boolean =>
  JSON.stringify([a.box, a.retractor, a.cord, a.restHeight, a.holds, a.mount]) ===
  JSON.stringify([b.box, b.retractor, b.cord, b.restHeight, b.holds, b.mount]);

/** Chargers that lost their drops on the new ones, in their places; new chargers for stalls that had none. */
function withTheirChargers(
  file: SiteFile,
  hung: SiteFile,
  { chargers }: Cleared,
  cords: readonly CordToCome[],
): { readonly file: SiteFile; readonly added: readonly string[] } {
  const dropOf = new Map(cords.map(({ stall, drop }) => [stall, drop]));
  const moved = new Map(
    chargers.map((charger): [string, Charger] => [charger.id, { ...charger, drop: dropOf.get(charger.stalls[0]!)! }]),
  );
  const again = (file.chargers ?? []).map((one) => moved.get(one.id) ?? one);
  const back: SiteFile = again.length === 0 ? hung : { ...hung, chargers: again };
  const was = new Set(chargers.flatMap(({ stalls }) => stalls));
  const fresh = cords.filter(({ stall }) => !was.has(stall));
  const next = withChargers(back, fresh, new Map());
  return { file: next, added: (next.chargers ?? []).slice(again.length).map(({ id }) => id) };
}
