import type { Finding } from '../../routing/site/rules/finding.ts';
import type { SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { counted } from '../../routing/words/counted.ts';
import { alternativeOf } from '../plan/compared/alternative.ts';
import type { Alternative } from '../plan/compared/comparison.ts';
import type { PriceList } from '../prices/price-list.ts';
import { withPullPoints } from '../propose/raceways/pull-points.ts';
import { dropWords } from '../propose/volts/drop-words.ts';
import { type DropHeld, withDropHeld } from '../propose/volts/hold-drop.ts';
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

const MOST_ROUNDS = 12;

/**
 * A way planned and priced, with what fails in it put right where that can be done without drawing it otherwise: feeders
 * that are new made larger and the branches of some boards held to less drop where the total is over its limit, as a
 * proposal holds it (transformers are as the way says); a ceiling of what all chargers draw at full rate, which costs no car
 * anything, where only the least load that a calculation counts for each is over a rating. What is left must be forced by
 * the lot.
 * @param fresh feeders that the way brings; its chargers are all new
 */
export function mended(
  file: SiteFile,
  fresh: ReadonlySet<string>,
  forcedBy: (finding: Finding) => Forced | null,
  prices: PriceList,
): MendOutcome {
  let next = file;
  const says: string[] = [];
  let held: DropHeld | null = null;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const planned = alternativeOf(next.name, toSite(next), prices);
    const fails = planned.plan.findings.filter(({ severity }) => severity === 'fail');
    const own = fails.filter((finding) => forcedBy(finding) === null);
    if (own.length === 0)
      return {
        ok: true,
        file: next,
        planned,
        says: [...new Set([...says, ...(held === null ? [] : dropWords(held))])],
        forced: fails.flatMap((one) => forcedBy(one) ?? []),
      };
    const cured = own.map((finding) => cure(next, finding, fresh, prices)).find((one) => one !== null);
    if (cured === undefined) return { ok: false, says: own[0]!.says };
    next = cured.file;
    if ('held' in cured) held = held === null ? cured.held : both(held, cured.held);
    else says.push(cured.says);
  }
  return { ok: false, says: 'What fails in it could not be put right.' };
}

/** What was made larger to hold the drop, and again after something else was put right. */
const both = (a: DropHeld, b: DropHeld): DropHeld => ({
  file: b.file,
  widened: [...new Set([...a.widened, ...b.widened])],
  larger: [...new Set([...a.larger, ...b.larger])],
  limited: new Map([...a.limited, ...b.limited]),
  dollars: a.dollars + b.dollars,
});

type Cure = { readonly file: SiteFile; readonly says: string } | { readonly file: SiteFile; readonly held: DropHeld };

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

/** What is new on the way to the boxes larger, the cheapest that does it, as in a proposal; null where none does. */
function lessDrop(file: SiteFile, fresh: ReadonlySet<string>, prices: PriceList): Cure | null {
  const chargers = (file.chargers ?? []).map(({ id }) => id);
  const held = withDropHeld(file, new Set([...fresh, ...chargers]), prices);
  return held.widened.length + held.larger.length + held.limited.size > 0 ? { file: held.file, held } : null;
}
