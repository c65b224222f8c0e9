import { counting } from '../../kept/counting.ts';
import { kept, keptByKey } from '../../kept/kept.ts';
import { isHeld, nearestMember, steelOf } from '../../network/support/steel-near.ts';
import { hangs, unheldStretches } from '../../network/support/unheld.ts';
import { type Box, boxOf } from '../../plane/box.ts';
import { LENGTH_SLACK } from '../../plane/space.ts';
import { printLength } from '../../site/numbers/feet-inches.ts';
import type { Finding } from '../../site/rules/finding.ts';
import { siteRule } from '../../site/rules/rule-notes.ts';
import type { Method, Units } from '../../site/schema/vocabulary.ts';
import type { Drop, Point3, Raceway, Site } from '../../site/site.ts';
import { counted } from '../../words/counted.ts';
import { keptNear, type Overhead } from './kept-near.ts';

/** How far apart supports of a method may be, feet, and the section that says so. */
export interface SupportSpacing {
  readonly feet: number;
  readonly section: string;
}
export type SupportSpacings = Readonly<Record<Method, SupportSpacing>>;

/** Slips of the ends of a stretch, feet: it begins where the reach of a member ends, slack and all. */
const SLIPS = 1e-6;

/** What is looked at against, one object while it is the same. */
interface Limits {
  readonly units: Units;
  readonly reach: number;
  readonly spacings: SupportSpacings;
}

const limitsBy = kept((spacings: SupportSpacings, units: Units, reach: number): Limits => ({ units, reach, spacings }));

/**
 * Finding `unsupported`: what hangs and has nothing to hang from. A raceway overhead hangs from members within
 * `rules.hangReach` of it in the plan, above it or beside it; the stretches between them are no longer than the supports
 * of its method may be apart (`spacings`). The box and the retractor of an overhead drop each have a member so near.
 * Upright legs stand against a column, a wall or equipment; what lies on a surface or in the ground, pedestals and wall
 * boxes do not hang. A site without any member says so once. What the member bears is not looked at. Each raceway is
 * looked at by itself: one that is drawn in short pieces is looked at piece by piece.
 */
export function supportFindings(site: Site, spacings: SupportSpacings): readonly Finding[] {
  const { members, raceways, drops } = site;
  if (members.length === 0) return nothingDrawn(raceways, drops);
  const overhead = { steel: steelOf(members), limits: limitsBy(spacings, site.units, site.rules.hangReach) };
  const ofRaceways = racewaySupport(raceways, overhead);
  const ofDrops = dropSupport(drops, overhead);
  return ofRaceways.length === 0 ? ofDrops : ofDrops.length === 0 ? ofRaceways : [...ofRaceways, ...ofDrops];
}

const NOTHING: readonly Finding[] = [];

const isOverhead = ({ mount = 'overhead' }: Drop): boolean => mount === 'overhead';
const isHung = ({ place, path }: Raceway): boolean => place === 'overhead' && hangs(path);

const racewaySupport = keptNear<Raceway, Limits>(
  ({ path }) => boxOf(path),
  (raceway, now) => (isHung(raceway) ? racewayFinding(raceway, now) : NOTHING),
);

const dropSupport = keptNear<Drop, Limits>(
  ({ box, retractor = box }): Box =>
    boxOf([
      [box[0], box[1]],
      [retractor[0], retractor[1]],
    ]),
  (drop, now) => (isOverhead(drop) ? dropFinding(drop, now) : NOTHING),
);

function racewayFinding({ id, path, method }: Raceway, { steel, limits }: Overhead<Limits>): readonly Finding[] {
  const { units, reach, spacings } = limits;
  const { feet: spacing, section } = spacings[method];
  const long = unheldStretches(path, steel, reach).filter(({ length }) => length > spacing + SLIPS);
  if (long.length === 0) return NOTHING;
  const worst = long.reduce((most, one) => (one.length > most.length ? one : most));
  const print = (feet: number): string => printLength(feet, units);
  const nearest = nearestMember(steel, worst.middle);
  const others = long.length - 1;
  const more = others === 0 ? '' : ` So do ${others === 1 ? 'one more stretch' : `${others} more stretches`} of it.`;
  return [
    {
      severity: 'fail',
      rule: 'unsupported',
      about: [id],
      says: `Raceway ${id} hangs from nothing over ${print(worst.length)}: ${
        nearest === null
          ? 'no beam or purlin lies above or beside it'
          : `at the middle of that, the nearest beam or purlin above or beside it, ${nearest.member.id}, is ${print(nearest.feet)} away in plan`
      }. A beam or purlin within ${print(reach)} holds it, and ${method} needs a support at least every ${print(spacing)}.${more} Lay it along the steel, or draw the purlin, strut or stringer that carries it${worst.between ? `: one of ${print(worst.length)} from steel to steel would do, and the takeoff counts it where conduit hangs` : ''}.`,
      value: Number(worst.length.toFixed(6)),
      limit: spacing,
      unit: 'ft',
      source: `${section}; ${siteRule('hangReach')}`,
    },
  ];
}

/** What holds the higher of two places that are one in the plan holds the lower one too. */
const isUnder = (low: Point3, high: Point3): boolean => low[0] === high[0] && low[1] === high[1] && low[2] <= high[2];

function dropFinding({ id, box, retractor }: Drop, { steel, limits }: Overhead<Limits>): readonly Finding[] {
  const { units, reach } = limits;
  if (isHeld(steel, box, reach) && (!retractor || isUnder(retractor, box) || isHeld(steel, retractor, reach)))
    return NOTHING;
  const points: [string, Point3][] = [['box', box]];
  if (retractor) points.push(['retractor', retractor]);
  const loose = points.flatMap(([what, at]) => {
    const nearest = nearestMember(steel, at);
    return nearest !== null && nearest.feet <= reach + LENGTH_SLACK ? [] : [{ what, nearest }];
  });
  if (loose.length === 0) return NOTHING;
  const print = (feet: number): string => printLength(feet, units);
  const worst = loose.reduce((most, one) =>
    (one.nearest?.feet ?? Number.POSITIVE_INFINITY) > (most.nearest?.feet ?? Number.POSITIVE_INFINITY) ? one : most,
  );
  const what = loose.map((one) => one.what).join(' and the ');
  return [
    {
      severity: 'fail',
      rule: 'unsupported',
      about: [id],
      says: `The ${what} of ${id} ${loose.length === 1 ? 'hangs' : 'hang'} from nothing: ${
        worst.nearest === null
          ? 'no beam or purlin lies above or beside it'
          : `the nearest beam or purlin above or beside it, ${worst.nearest.member.id}, is ${print(worst.nearest.feet)} away in plan`
      }; within ${print(reach)} it would hold it. Hang it under the steel, or draw the beam, purlin or strut that carries it.`,
      ...(worst.nearest === null ? {} : { value: worst.nearest.feet }),
      limit: reach,
      unit: 'ft',
      source: `common practice, no source; ${siteRule('hangReach')}`,
    },
  ];
}

/** Once for the whole site, however much hangs. */
const nothingDrawn = (raceways: readonly Raceway[], drops: readonly Drop[]): readonly Finding[] =>
  nothingToHangFrom(
    HUNG,
    [ifAny(hungIn(raceways), 'raceway'), ifAny(overheadIn(drops), 'drop')].filter(Boolean).join(' and '),
  );

const hungIn = counting<Raceway>(isHung);
const overheadIn = counting<Drop>(isOverhead);

const ifAny = (n: number, what: string): string => (n === 0 ? '' : counted(n, what));

/** What is said of some counts: the same object while they are the same. */
const nothingToHangFrom = keptByKey(
  (counts: string) => counts,
  (_: object, counts: string): readonly Finding[] =>
    counts === ''
      ? []
      : [
          {
            severity: 'warn',
            rule: 'unsupported',
            about: [],
            says: `Nothing overhead is drawn to hang from: ${counts} overhead, and no beam or purlin on the site. Whether anything holds them was not looked at. Draw the canopy, or the beams and purlins that carry them.`,
            source: 'common practice, no source',
          },
        ],
);
const HUNG = {};
