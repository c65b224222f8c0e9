import type { SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { counted } from '../../routing/words/counted.ts';
import { type DecidingDay, decidingDay, decidingWords } from '../day/figures/deciding-day.ts';
import { alternativeOf } from '../plan/compared/alternative.ts';
import type { Alternative } from '../plan/compared/comparison.ts';
import { tablesOf } from '../tables/editions.ts';
import { baseOf, type StudyBase } from './base.ts';
import { type Candidate, candidatesOf, LAYING_OUT } from './candidates.ts';
import { type WayFigures, wayFigures, withDay } from './figures.ts';
import { forcing } from './forced.ts';
import { loadingWords } from './loading-words.ts';
import { mended } from './mended.ts';
import type { ImpossibleWay, MayGoOn, Study, StudyWay, StudyWish } from './shape.ts';
import { twinOf } from './twins.ts';
import { unbeatenOf } from './unbeaten.ts';

/** More stalls than these are no lot for a study: study a part of it. */
export const MOST_STUDIED = 600;
/** Hours of a stay that may be asked for. */
export const STAYS = { least: 0.25, usual: 4, most: 23 } as const;

/** How far a study is: what is being worked on, and how many ways are done of those to be drawn (0 before that is known). */
export interface StudyDoing {
  readonly says: string;
  readonly done: number;
  readonly of: number;
}

/** A study, or why the lot is none to make one of. */
export type Studied = { readonly ok: true; readonly study: Study } | { readonly ok: false; readonly says: string };

/**
 * The ways to do the job on one lot with its supply: each drawn whole, planned, priced and checked by the same code as any
 * site. What is drawn of the job is the first way; the others begin with the lot as it stands without it. None has a
 * failing finding that the lot does not force. Pure: the same file gives the same study.
 * @param tell hears what is being worked on
 * @param ready hears the study as far as it has come, after each way
 * @param mayGoOn asked as it goes; once it says no, the ways that are left are counted and not drawn
 */
export function study(
  file: SiteFile,
  wish: StudyWish,
  tell: (doing: StudyDoing) => void = () => {},
  ready: (soFar: Study) => void = () => {},
  mayGoOn: MayGoOn = () => true,
): Studied {
  const refused = whyNoStudy(file);
  if (refused !== null) return { ok: false, says: refused };
  tell({ says: 'what stands', done: 0, of: 0 });
  const base = baseOf(file);
  const laying = (says: string): void => tell({ says, done: 0, of: 0 });
  const { list, cannot, looked, leftOut } = candidatesOf(base, wish.prices, laying, mayGoOn);
  let day: DecidingDay | null = null;
  const figured = (planned: Alternative, own: SiteFile): WayFigures => {
    const withCars = toSite(withDay(own, base.wanted.size, wish.stayHours));
    day ??= decidingDay([withCars], wish.day);
    return wayFigures(planned, freshRaceways(own, base), withCars, day);
  };
  const drawn = base.isDrawn ? [asDrawn(file, base, wish, figured)] : [];
  const forcedBy = forcing(base.site);
  const continuous = tablesOf(base.site.rules).continuous.factor;
  const ways: StudyWay[] = [...drawn];
  const none: ImpossibleWay[] = [...cannot];
  let late = 0;
  const soFar = (): Study => ({
    lot: file.name,
    stalls: base.wanted.size,
    ways: [...ways],
    unbeaten: unbeatenOf(ways),
    cannot: [...none],
    looked: looked + drawn.length,
    leftOut: late === 0 ? leftOut : [...leftOut, `${counted(late, 'way')} for which there was no time.`],
    assumes: assumptions(file, base, wish, day),
  });
  for (const [done, candidate] of list.entries()) {
    if (ways.length > 0 && !mayGoOn()) {
      late = list.length - done;
      break;
    }
    tell({ says: `${candidate.mount}; ${candidate.supply}`, done, of: list.length });
    const name = nameOf(candidate, base);
    const until = LAYING_OUT + ((1 - LAYING_OUT) * (done + 1)) / list.length;
    const made = candidate.make(() => mayGoOn(until));
    if (!made.ok) {
      none.push({ name, says: made.says });
      continue;
    }
    const fresh = freshFeeders(made.file, base);
    const named: SiteFile = { ...made.file, name: `${file.name}: ${name}` };
    const checked = mended(named, fresh, forcedBy, wish.prices);
    if (!checked.ok) {
      none.push({ name, says: checked.says });
      continue;
    }
    const { mount, supply, amps } = candidate;
    const figures = figured(checked.planned, checked.file);
    const twin = twinOf(ways, { file: checked.file, figures });
    if (twin !== null) {
      ways[ways.indexOf(twin)] = { ...twin, also: [...twin.also, name] };
      ready(soFar());
      continue;
    }
    ways.push({
      id: idOf(ways.length),
      name,
      also: [],
      mount,
      supply,
      amps,
      file: checked.file,
      says: [...made.says, ...checked.says, ...loadingWords(toSite(checked.file), checked.planned.plan, continuous)],
      forced: checked.forced,
      figures,
    });
    ready(soFar());
  }
  return { ok: true, study: soFar() };
}

const idOf = (place: number): string => `W${String(place + 1).padStart(2, '0')}`;

function nameOf({ mount, supply, amps }: Candidate, { amps: usual }: StudyBase): string {
  return `${mount}; ${supply}${amps === usual ? '' : `; ${amps} A chargers`}`;
}

function whyNoStudy({ stalls = [], equipment = [] }: SiteFile): string | null {
  if (stalls.length === 0) return 'No stall is drawn that chargers could serve.';
  if (stalls.length > MOST_STUDIED)
    return `It has ${stalls.length} stalls, and a study takes up to ${MOST_STUDIED}: study a part of the lot.`;
  if (equipment.length === 0) return 'No equipment is drawn that could feed chargers: draw the source, or what stands.';
  return null;
}

/** Feeders that a way brings: none that stands, and none that was drawn before. */
function freshFeeders({ feeders = [] }: SiteFile, { file }: StudyBase): ReadonlySet<string> {
  const before = new Set((file.feeders ?? []).map((one) => JSON.stringify(one)));
  return new Set(
    feeders.filter((one) => one.existing !== true && !before.has(JSON.stringify(one))).map(({ id }) => id),
  );
}

function freshRaceways({ raceways = [] }: SiteFile, { file }: StudyBase): ReadonlySet<string> {
  const stands = new Set((file.raceways ?? []).map(({ id }) => id));
  return new Set(raceways.map(({ id }) => id).filter((id) => !stands.has(id)));
}

/** What is drawn, as it is, with whatever fails in it. */
function asDrawn(
  file: SiteFile,
  base: StudyBase,
  wish: StudyWish,
  figured: (planned: Alternative, own: SiteFile) => WayFigures,
): StudyWay {
  const planned = alternativeOf(file.name, toSite(file), wish.prices);
  const fails = planned.plan.findings.filter(({ severity }) => severity === 'fail');
  return {
    id: idOf(0),
    name: 'As it is drawn',
    also: [],
    mount: 'as drawn',
    supply: 'as drawn',
    amps: base.amps,
    file,
    says: [],
    forced: fails.map((finding) => ({ finding, by: 'it is drawn so' })),
    figures: figured(planned, file),
  };
}

const assumptions = (
  file: SiteFile,
  { wanted }: StudyBase,
  { prices, stayHours }: StudyWish,
  day: DecidingDay | null,
): readonly string[] => [
  `Prices: ${prices.name}. Equipment and feeders that stand are not bought where the file says that they do.`,
  file.days?.length
    ? `Energy: of the charging day ${day === null ? 'of the file' : (decidingWords(day) ?? day.id)}, under the rule that the lot is run by.`
    : `Energy: no charging day is drawn; ${wanted.size} cars are there at once for ${stayHours} h each and take what they are given.`,
  'Days: hours of labor over those of the crew in a day. What is dug closes its stalls while all work in the ground is done; a lift closes four stalls at a time (common practice, no source).',
];
