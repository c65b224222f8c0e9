import { feederRoutesOf } from '../../network/feeder-routes.ts';
import type { Run } from '../../network/run.ts';
import { tappedFromAbove } from '../../network/run-findings.ts';
import { runsOf } from '../../network/runs.ts';
import { byId } from '../../site/look-up.ts';
import { printLength } from '../../site/numbers/feet-inches.ts';
import type { Charger, Member, Point3, Raceway, Site } from '../../site/site.ts';
import { OUT_OF_GROUND } from './lattice/ground-ways.ts';
import type { PaidBranches, RacewayMake, RacewayPlace, RacewaysProposal } from './raceway-make.ts';
import { type Joining, racewayPaths } from './raceway-paths.ts';
import { type CircuitEnd, routeEnds, type Straights } from './route-ends.ts';
import { besideStanding, pathsAlong } from './walked.ts';

/**
 * Raceways to the boxes of all chargers that have no run, and to pedestals tapped from overhead, from the equipment that feeds each, and for feeders that have
 * neither a length nor a way: along the lot and square to it, under the steel or under stringers from member to member, up
 * and over where something must stay clear, in the ground where nothing holds them, through no keep-out that blocks
 * raceways, and on the raceways that are there as far as they go. Pedestals and feeders are reached in the ground. On a
 * site without any steel what hangs is taken to be held. Branches share raceways and conduits at the least cost that the search finds.
 * Lengths in feet. `tell` hears how many of the pieces of equipment are done, before each, or of the
 * answers that are looked at for them.
 */
export function proposeRaceways(
  site: Site,
  wish: RacewayMake,
  tell: (done: number, of: number) => void = () => {},
): RacewaysProposal {
  let [isStopped, laidFor] = [false, 0];
  const make: RacewayMake = {
    ...wish,
    mayGoOn: () => {
      const may = wish.mayGoOn();
      isStopped ||= !may;
      return may;
    },
  };
  const without: { id: string; says: string }[] = [];
  const cut = site.keepouts.some(({ blocks }) => blocks.includes('raceway'))
    ? ', which keep-outs that block raceways cut'
    : '';
  let now = site;
  const routedFrom: RacewaysProposal['routed'][number][] = [];
  /** Of what is drawn beyond the site, what it was laid for. */
  const laid: { readonly raceways: (string | null)[]; readonly members: (string | null)[] } = {
    raceways: [],
    members: [],
  };
  const inAir: string[] = [];
  const paidFor: PaidBranches[] = [];
  const lay = (
    from: string,
    place: RacewayPlace,
    ends: readonly CircuitEnd[],
    told: (rounds: number) => void,
    isLast = false,
  ): void => {
    if (ends.length === 0) return;
    const own = new Set(ends.map(({ id }) => id));
    /** What no run of these goes along is not drawn, nor what lies on a raceway that is there. */
    const drawnFor = (sought: Straights, joining: Joining): Site => {
      const straights = besideStanding(
        sought,
        now.raceways.map(({ path }) => path),
      );
      const whole = withRaceways(
        now,
        straights.map((one) => ({ one, circuits: [] })),
        place,
        make.method,
      );
      const ways = runsOf(whole).runs.filter(({ charger }) => own.has(charger));
      if (ways.length === 0) return withStringers(whole, straights);
      const along = pathsAlong(
        straights,
        ways.map(({ path }) => path),
      );
      const used = straights.flatMap((one, i) => (along[i]!.length > 0 ? [{ one, circuits: along[i]! }] : []));
      return withStringers(
        withRaceways(now, used, place, make.method, joining),
        used.map(({ one }) => one),
      );
    };
    const { paid } = make;
    const share = own.size / Math.max(1, site.chargers.length);
    const isWhole = isLast && share >= LEAST_SHARE;
    // Each answer takes as long as all that is planned with it.
    const answers = paid ? Math.ceil(paid.rounds * (isWhole ? share : 1)) : 0;
    const isForChargers = site.chargers.some(({ id }) => own.has(id));
    if (isForChargers) laidFor++;
    const rounds = isForChargers ? answers : 0;
    const routed = routeEnds(
      now,
      byId(site.equipment).get(from)!,
      ends,
      place,
      make,
      rounds > 0 && paid
        ? {
            rounds,
            of: (laid, joining) => paid.judge(drawnFor(laid, joining), from, own, isWhole),
            tell: told,
            ...(place === 'overhead' && paid.floor && { floor: paid.floor }),
          }
        : null,
    );
    routedFrom.push({ ...tag(isForChargers ? from : null), cost: routed.cost, bound: routed.bound });
    for (const id of routed.unreached)
      without.push({ id, says: `No way was found from ${from} to ${id} along the lines that were looked at${cut}.` });
    inAir.push(...routed.inAir);
    now = drawnFor(routed.laid, routed.joining);
    for (const list of ['raceways', 'members'] as const)
      while (site[list].length + laid[list].length < now[list].length) laid[list].push(isForChargers ? from : null);
    const { floor } = routed;
    if (floor && routed.unreached.length === 0)
      paidFor.push({ from, chargers: [...own], floor: floor.least, ways: floor.ways });
  };

  const lacking = new Set(feederRoutesOf(site).routes.flatMap(({ feeder, way }) => (way === null ? [feeder] : [])));
  for (const { id, from, to } of site.feeders)
    if (make.only === undefined && lacking.has(id))
      lay(
        from,
        'underground',
        [{ id, at: byId(site.equipment).get(to)!.entry, most: Number.POSITIVE_INFINITY }],
        () => {},
      );

  const runs = new Map(runsOf(now).runs.map((run) => [run.charger, run]));
  const open = site.chargers.filter((charger) => {
    if (make.only !== undefined) return make.only.has(charger.id);
    const run = runs.get(charger.id)!;
    return run.length === null || tappedFromAbove(now, dropOf(site, charger), run) !== null;
  });
  const feeding = site.equipment.filter(({ id }) => open.some(({ from }) => from === id));
  const last = open.filter(({ from }) => from === feeding.at(-1)?.id);
  const lastPlace: RacewayPlace = last.some((one) => placeOf(site, one) === 'underground') ? 'underground' : 'overhead';
  for (const [done, { id }] of feeding.entries()) {
    const each = make.paid?.rounds ?? 1;
    tell(done * each, feeding.length * each);
    for (const place of ['overhead', 'underground'] as const)
      lay(
        id,
        place,
        open
          .filter((charger) => charger.from === id && placeOf(site, charger) === place)
          .map((one) => endOf(site, one)),
        (rounds) => tell(done * each + rounds, feeding.length * each),
        done === feeding.length - 1 && place === lastPlace,
      );
  }

  const told = new Set(without.map(({ id }) => id));
  const wanted = new Set(open.map(({ id }) => id).filter((id) => !told.has(id)));
  for (const run of runsOf(now).runs)
    if (wanted.has(run.charger) && !run.ok) without.push({ id: run.charger, says: whyNot(now, run) });
  const raceways = now.raceways.slice(site.raceways.length);
  return {
    raceways: raceways.map(({ path, method, place }, i) => ({ path, method, place, ...tag(laid.raceways[i]) })),
    stringers: now.members.slice(site.members.length).map(({ from, to }, i) => ({ from, to, ...tag(laid.members[i]) })),
    inAir,
    cost: routedFrom.reduce((sum, one) => sum + one.cost, 0),
    bound: routedFrom.reduce((sum, one) => sum + one.bound, 0),
    routed: routedFrom,
    paid: paidFor,
    isSteady: !isStopped || laidFor <= 1,
    without,
  };
}

const tag = (of: string | null | undefined): { readonly of?: string } => (of ? { of } : {});

/** The last to be laid is judged with all others where it is so much of the lot: more would take too long for each answer. */
const LEAST_SHARE = 1 / 3;

type Straight = Straights[number];

/** What is routed overhead and goes down below grade lies in the ground there. */
const isInGround = ([a, b]: Straight): boolean => Math.min(a[2], b[2]) < 0;

/** It comes up out of the ground at a column. */
const isRiser = (one: Straight): boolean => isInGround(one) && Math.max(one[0][2], one[1][2]) === OUT_OF_GROUND;

/** The site with raceways along some straights drawn in. */
function withRaceways(
  site: Site,
  straights: readonly { readonly one: Straight; readonly circuits: readonly number[] }[],
  place: RacewayPlace,
  method: RacewayMake['method'],
  joining: Joining = 'straight on',
): Site {
  const inGround = (one: Straight): boolean => place === 'underground' || isInGround(one);
  const parts = [
    { kind: 'overhead', place: 'overhead', own: straights.filter(({ one }) => !inGround(one)) },
    { kind: 'underground', place: 'underground', own: straights.filter(({ one }) => inGround(one) && !isRiser(one)) },
    { kind: 'riser', place: 'underground', own: straights.filter(({ one }) => inGround(one) && isRiser(one)) },
  ] as const;
  const fresh = parts.flatMap(({ kind, place: lies, own }) =>
    racewayPaths(
      own.map(({ one: [a, b], circuits }) => ({ a, b, circuits })),
      joining,
    ).map((path) => ({
      path: path.map(([x, y, z]): Point3 => [x, y, z]),
      method: method[kind],
      place: lies,
    })),
  );
  const n = site.raceways.length;
  return { ...site, raceways: [...site.raceways, ...fresh.map((one, i): Raceway => ({ id: ` ${n + i}`, ...one }))] };
}

/** And with the stringers that hold them, each once. */
function withStringers(site: Site, straights: readonly Straight[]): Site {
  const fresh = new Map(straights.flatMap(([, , own]) => own.map((one) => [JSON.stringify(one), one] as const)));
  if (fresh.size === 0) return site;
  const n = site.members.length;
  return {
    ...site,
    members: [...site.members, ...[...fresh.values()].map((one, i): Member => ({ id: ` ${n + i}`, ...one }))],
  };
}

const dropOf = (site: Site, { drop }: Charger) => byId(site.drops).get(drop)!;

const placeOf = (site: Site, charger: Charger): RacewayPlace =>
  dropOf(site, charger).mount === 'pedestal' ? 'underground' : 'overhead';

function endOf(site: Site, charger: Charger): CircuitEnd {
  const { allowance } = site.rules;
  const most = limitOf(site, charger) - allowance.equipment - allowance.box;
  return { id: charger.id, at: dropOf(site, charger).box, most };
}

const limitOf = (site: Site, charger: Charger): number => charger.branchLimit ?? site.rules.branchLimit;

function whyNot(site: Site, { charger, from, conductorLength }: Run): string {
  if (conductorLength === null) return `The box of ${charger} is out of reach of the raceways that were found.`;
  const limit = limitOf(site, byId(site.chargers).get(charger)!);
  const print = (feet: number): string => printLength(feet, site.units, { inchParts: 1, decimals: 2 });
  return `The branch of ${charger} from ${from} comes to ${print(conductorLength)} of conductor, ${print(conductorLength - limit)} over its limit; equipment nearer by would do.`;
}
