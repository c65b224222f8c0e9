import type { Finding } from '../../routing/site/rules/finding.ts';
import type { SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { counted } from '../../routing/words/counted.ts';
import { alternativeOf } from '../plan/compared/alternative.ts';
import type { Alternative } from '../plan/compared/comparison.ts';
import { plan } from '../plan/plan.ts';
import type { PriceList } from '../prices/price-list.ts';
import { withPullPoints } from '../propose/raceways/pull-points.ts';
import { withDropHeld } from '../propose/volts/hold-drop.ts';
import { dealtLine } from './at-full-rate.ts';
import type { Forced } from './shape.ts';

/** A way in which nothing fails that is not forced; or why there is none. */
export type MendOutcome =
  | {
      readonly ok: true;
      readonly file: SiteFile;
      readonly planned: Alternative;
      readonly says: readonly string[];
      readonly forced: readonly Forced[];
    }
  | { readonly ok: false; readonly says: string };

/** Branches are held to so much less at a time, percent, and never to less than the least. */
const LESS = 0.5;
const LEAST = 1;
const MOST_ROUNDS = 12;

/**
 * A way planned and priced, with what fails in it put right where that can be done without drawing it otherwise: feeders
 * that are new made wider and branches held to less drop where the total is over its limit; a ceiling of what all
 * chargers draw at full rate, which costs no car anything, where only the least load that a calculation counts for each
 * is over a rating. What is left must be forced by the lot.
 * @param fresh feeders that the way brings
 */
export function mended(
  file: SiteFile,
  fresh: ReadonlySet<string>,
  forcedBy: (finding: Finding) => Forced | null,
  prices: PriceList,
): MendOutcome {
  let next = file;
  const says: string[] = [];
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const planned = alternativeOf(next.name, toSite(next), prices);
    const fails = planned.plan.findings.filter(({ severity }) => severity === 'fail');
    const own = fails.filter((finding) => forcedBy(finding) === null);
    if (own.length === 0)
      return {
        ok: true,
        file: next,
        planned,
        says: lastOfEach(says),
        forced: fails.flatMap((one) => forcedBy(one) ?? []),
      };
    const cured = own.map((finding) => cure(next, finding, fresh, prices)).find((one) => one !== null);
    if (cured === undefined) return { ok: false, says: own[0]!.says };
    next = cured.file;
    says.push(cured.says);
  }
  return { ok: false, says: 'What fails in it could not be put right.' };
}

/** Branches are told once, with the limit that they came to. */
const lastOfEach = (says: readonly string[]): readonly string[] => {
  const isBranch = (one: string): boolean => one.startsWith('Branches are held');
  const last = says.findLast(isBranch);
  return says.filter((one, i) => (isBranch(one) ? one === last : says.indexOf(one) === i));
};

interface Cure {
  readonly file: SiteFile;
  readonly says: string;
}

function cure(file: SiteFile, finding: Finding, fresh: ReadonlySet<string>, prices: PriceList): Cure | null {
  switch (finding.rule) {
    case 'unit-load':
      return ceilingFor(file, finding);
    case 'total-drop':
      return lessDrop(file, fresh, prices);
    case 'bends':
    case 'pull-length':
      return morePullPoints(file);
    default:
      return null;
  }
}

/** A ceiling of what its chargers draw at full rate, on the board that a finding is about or those beyond it. */
function ceilingFor(file: SiteFile, { about }: Finding): Cure | null {
  const { equipment, feeders, chargers } = toSite(file);
  const fed = (id: string): readonly string[] => feeders.flatMap(({ from, to }) => (from === id ? [to] : []));
  const beyond = (id: string, seen: readonly string[] = []): readonly string[] =>
    seen.includes(id) ? [] : [id, ...fed(id).flatMap((next) => beyond(next, [...seen, id]))];
  const boards = equipment.filter(
    ({ id, managedAmps }) =>
      managedAmps === undefined &&
      about.some((one) => beyond(one).includes(id)) &&
      chargers.some(({ from }) => from === id),
  );
  if (boards.length === 0) return null;
  const ceilings = new Map(
    boards.map(({ id, phases }) => [
      id,
      Math.ceil(
        dealtLine(
          chargers.filter(({ from }) => from === id),
          phases ?? 3,
        ),
      ),
    ]),
  );
  return {
    file: {
      ...file,
      equipment: (file.equipment ?? []).map((one) => {
        const managedAmps = ceilings.get(one.id);
        return managedAmps === undefined ? one : { ...one, managedAmps };
      }),
    },
    says: [...ceilings]
      .map(
        ([id, amps]) =>
          `Load management at ${id} is set to ${amps} A, what its chargers draw at full rate, so that none is counted for more.`,
      )
      .join(' '),
  };
}

/** Larger branches lie in other conduits, which may bend more between two places where they can be opened. */
function morePullPoints(file: SiteFile): Cure | null {
  const { file: next, added } = withPullPoints(file);
  return added === 0 ? null : { file: next, says: `${counted(added, 'pull point')} more than the raceways had.` };
}

/** More conductors in parallel in what is new, where that is enough; else larger branches. */
function lessDrop(file: SiteFile, fresh: ReadonlySet<string>, prices: PriceList): Cure | null {
  const { file: wider, widened } = withDropHeld(file, fresh, prices);
  if (widened.length > 0 && !plan(toSite(wider)).findings.some(({ rule }) => rule === 'total-drop'))
    return {
      file: wider,
      says: `${widened.join(', ')}: more conductors in parallel than the breaker asks for, to hold the drop.`,
    };
  const { branch } = toSite(file).rules.dropLimit;
  if (branch - LESS < LEAST - 1e-9) return null;
  const limit = branch - LESS;
  return {
    file: { ...file, rules: { ...file.rules, dropLimit: { ...file.rules?.dropLimit, branch: limit } } },
    says: `Branches are held to ${limit} % of drop, so that the total stays within its limit.`,
  };
}
