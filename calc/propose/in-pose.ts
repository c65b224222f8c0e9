import { type Pose, poseOf } from '../../routing/propose/pose/pose.ts';
import { verticesAt } from '../../routing/propose/pose/vertices-at.ts';
import { indexById } from '../../routing/site/ids.ts';
import { ELEMENT_LISTS, placedKind } from '../../routing/site/kinds/kinds.ts';
import type { Charger, Drop, SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { plan } from '../plan/plan.ts';
import { bidOfRows } from './bid-worth.ts';
import { failsOf } from './forced-words.ts';
import type { ProposalPart } from './part.ts';
import type { Doing, Proposal, ProposalWish } from './proposal.ts';
import { proposeAll } from './propose-all.ts';

/**
 * Drops with their chargers, panels and raceways as `proposeAll` finds them, whichever way the lot lies on the paper, and
 * however its elements are named and ordered: they are sought in one pose of the lot and turned back.
 */
export function proposeInPose(
  file: SiteFile,
  wish: ProposalWish,
  tell: (doing: Doing) => void,
  ready: (soFar: Proposal) => void,
  mayGoOn: () => boolean,
): Proposal {
  const pose = poseOf(file);
  const back = (proposal: Proposal): Proposal => turnedBack(file, pose, proposal);
  const found = proposeAll(pose.file, wish, tell, (soFar) => ready(back(soFar)), mayGoOn);
  const whole = back(found);
  const { findings, takeoff } = plan(toSite(whole.file));
  const fails = failsOf(findings).length;
  // Places are rounded once more when they are turned back: should that ever be too much, the lot is taken as it lies.
  return fails > (found.fails ?? fails) && mayGoOn()
    ? proposeAll(file, wish, tell, ready, mayGoOn)
    : { ...whole, ...(found.dollars !== undefined && { dollars: bidOfRows(takeoff, wish.prices) }) };
}

/** A proposal on the lot as it lies: what was drawn as it was, what is new turned back. */
function turnedBack(file: SiteFile, { file: posed, back, isOdd }: Pose, proposal: Proposal): Proposal {
  let next = file;
  const found = isOdd ? joinedFast(proposal.file) : proposal.file;
  for (const list of ELEMENT_LISTS) {
    const drawn = new Set((posed[list] ?? []).map(({ id }) => id));
    const kind = placedKind(list);
    const fresh = (found[list] ?? [])
      .filter(({ id }) => !drawn.has(id))
      .map((one) => (kind === null ? one : kind.moved(one as never, back)));
    if (fresh.length > 0) next = { ...next, [list]: [...(file[list] ?? []), ...fresh] };
  }
  const { file: named, nameOf } = namedByStalls(file, next);
  const retold = (text: string): string => text.replace(NAMES, (id) => nameOf.get(id) ?? id);
  return {
    ...proposal,
    file: named,
    parts: proposal.parts.map(
      (part): ProposalPart => ({
        ...part,
        says: part.says.map(retold),
        without: part.without.map(({ id, says }) => ({ id: nameOf.get(id) ?? id, says: retold(says) })),
      }),
    ),
  };
}

/** Raceways with a vertex wherever a box, a pull point or a vertex of another is on them. */
function joinedFast(file: SiteFile): SiteFile {
  const { raceways = [], drops = [], pullpoints = [] } = file;
  const places = [
    ...drops.map(({ box }) => box),
    ...pullpoints.map(({ at }) => at),
    ...raceways.flatMap(({ path }) => path),
  ];
  return {
    ...file,
    ...(raceways.length > 0 && { raceways: raceways.map((one) => ({ ...one, path: verticesAt(one.path, places) })) }),
  };
}

/** Names of new drops and chargers where they stand in a sentence. */
const NAMES = /(?<![\w.-])[A-Za-z]+\d+(?![\w-])/g;

/**
 * New drops and chargers named in the order in which their stalls are drawn. In their lists they stay in the order of their
 * places: phases are dealt to chargers in the order of the list, and by it wire is bought.
 */
function namedByStalls(
  before: SiteFile,
  file: SiteFile,
): { readonly file: SiteFile; readonly nameOf: ReadonlyMap<string, string> } {
  const nameOf = new Map<string, string>();
  const { chargers: all = [], drops: hung = [] } = file;
  const chargers = all.slice(before.chargers?.length ?? 0);
  const drops = hung.slice(before.drops?.length ?? 0);
  if (chargers.length === 0) return { file, nameOf };
  const stallAt = indexById(file.stalls ?? []);
  const firstOf = ({ stalls }: Charger): number => Math.min(...stalls.map((id) => stallAt.get(id) ?? LAST), LAST);
  const atDrop = new Map<string, number>();
  for (const one of chargers) atDrop.set(one.drop, Math.min(atDrop.get(one.drop) ?? LAST, firstOf(one)));
  const name = <T extends { readonly id: string }>(rows: readonly T[], rank: (row: T) => number): void => {
    const sorted = rows.map((row, i) => ({ row, i, at: rank(row) })).sort((a, b) => a.at - b.at || a.i - b.i);
    for (const [i, { row }] of sorted.entries()) nameOf.set(row.id, rows[i]!.id);
  };
  name(drops, ({ id }) => atDrop.get(id) ?? LAST);
  name(chargers, firstOf);
  const named = (id: string): string => nameOf.get(id) ?? id;
  return {
    file: {
      ...file,
      ...(drops.length > 0 && {
        drops: [...(before.drops ?? []), ...drops.map((one): Drop => ({ ...one, id: named(one.id) }))],
      }),
      chargers: [
        ...(before.chargers ?? []),
        ...chargers.map((one): Charger => ({ ...one, id: named(one.id), drop: named(one.drop) })),
      ],
    },
    nameOf,
  };
}

/** After all stalls. */
const LAST = Number.MAX_SAFE_INTEGER;
