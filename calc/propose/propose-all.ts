import type { SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { plan } from '../plan/plan.ts';
import { withChargers } from './chargers.ts';
import { type Cord, dropsPart } from './drops-part.ts';
import { withDropHeld } from './hold-drop.ts';
import { type EquipmentPart, equipmentPart, type Shape } from './panels/equipment-part.ts';
import { dollarsOf } from './panels/trial-price.ts';
import type { Doing, Proposal, ProposalWish } from './proposal.ts';
import { racewaysPart } from './raceways-part.ts';

/** Ways in which panels are tried, the first first; the others as far as the lot is small enough to plan them all. */
const SHAPES: readonly Shape[] = [
  { more: 0, isShared: true },
  { more: 0, isShared: false },
  { more: 3000, isShared: true },
  { more: -1500, isShared: true },
];
/** So many stalls may be planned for, over all ways that are tried. */
const MOST_PLANNED = 240;

/** A proposal whole, and what decides between it and another. */
interface Whole extends Proposal {
  readonly fails: number;
  readonly dollars: number;
}

/**
 * Drops with their chargers, panels for them, and raceways: in each of some ways to set panels, of which the one that is
 * cheapest when it is planned and priced is taken, fewer failing findings first.
 */
export function proposeAll(
  file: SiteFile,
  { cordsADrop, prices, load }: ProposalWish,
  tell: (doing: Doing) => void,
  ready: (soFar: Proposal) => void,
): Proposal {
  tell({ what: 'drops', done: 0, of: 1 });
  const { file: hung, cords, part: drops } = dropsPart(file, cordsADrop);
  tell({ what: 'equipment', done: 0, of: 1 });
  const many = Math.max(1, Math.floor(MOST_PLANNED / Math.max(1, cords.length)));
  const ways = distinct(
    SHAPES.slice(0, Math.max(2, many)).map((shape) =>
      equipmentPart(hung, { prices, cords, shape, ...(load && { load }) }),
    ),
  ).slice(0, many);
  const first = ways[0]!;
  ready({ file: withChargers(first.file, cords, first.fromOf), parts: [drops, first.part] });
  let best: Whole | null = null;
  for (const [done, way] of ways.entries()) {
    const whole = wholeOf(file, way, cords, prices, (part, of) =>
      tell({ what: 'raceways', done: done * of + part, of: ways.length * of }),
    );
    if (best === null || isBetter(whole, best)) best = { ...whole, parts: [drops, ...whole.parts] };
  }
  return { file: best!.file, parts: best!.parts };
}

const isBetter = (a: Whole, b: Whole): boolean =>
  a.fails < b.fails || (a.fails === b.fails && a.dollars < b.dollars - 0.005);

/** Ways that differ in what they draw. */
function distinct(ways: readonly EquipmentPart[]): readonly EquipmentPart[] {
  const seen = new Set<string>();
  return ways.filter(({ file: { equipment, feeders }, fromOf }) => {
    const key = JSON.stringify([equipment, feeders, [...fromOf]]);
    const isNew = !seen.has(key);
    seen.add(key);
    return isNew;
  });
}

function wholeOf(
  file: SiteFile,
  way: EquipmentPart,
  cords: readonly Cord[],
  prices: ProposalWish['prices'],
  tell: (done: number, of: number) => void,
): Whole {
  const charged = withChargers(way.file, cords, way.fromOf);
  const { file: laid, part: raceways } = racewaysPart(charged, prices, tell);
  const fresh = [
    ...(laid.feeders ?? []).slice(file.feeders?.length ?? 0),
    ...(laid.equipment ?? []).slice(file.equipment?.length ?? 0),
  ];
  const { file: next, widened, larger } = withDropHeld(laid, new Set(fresh.map(({ id }) => id)), prices);
  const says = [
    ...some(
      widened,
      (has) => `${has('has', 'have')} more conductors in parallel than the breaker asks for, to hold the drop.`,
    ),
    ...some(larger, (is) => `${is('is', 'are')} larger than the load asks for, to hold the drop.`),
  ];
  const { findings, takeoff } = plan(toSite(next));
  return {
    file: next,
    parts: [{ ...way.part, says: [...way.part.says, ...says] }, raceways],
    fails: findings.filter(({ severity }) => severity === 'fail').length,
    dollars: dollarsOf(takeoff, prices),
  };
}

const some = (
  names: readonly string[],
  says: (verb: (one: string, many: string) => string) => string,
): readonly string[] =>
  names.length === 0 ? [] : [`${names.join(', ')} ${says((one, many) => (names.length === 1 ? one : many))}`];
