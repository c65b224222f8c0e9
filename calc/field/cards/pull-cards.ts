import { kept } from '../../../routing/kept/kept.ts';
import type { Site } from '../../../routing/site/site.ts';
import { isEasyPull, pullTension } from '../../branches/pulls/pull-tension.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import type { Conduit } from '../../plan-file/branches.ts';
import { racewaySpec } from '../../prices/spec.ts';
import { circuitNames } from '../../supply/panels/circuit-names.ts';
import { tablesOf } from '../../tables/editions.ts';
import { pullSchedule, type ScheduledPull } from '../../takeoff/buying/pull-schedule.ts';
import type { CardName } from './card-link.ts';

/** A pull that takes enough to be looked at. */
export interface HardPull {
  readonly conduit: string;
  /** The end that it is pulled from: the one that asks for less. */
  readonly towards: string;
  readonly pounds: number;
  readonly mostPounds: number;
  /** Pounds per foot against the inside of the worst bend. */
  readonly sidewall: number;
}

/** A conduit on the way of a circuit. Lengths in feet. */
export interface CardConduit {
  readonly id: string;
  /** `EMT 1 in`. */
  readonly spec: string;
  readonly from: string;
  readonly to: string;
  readonly length: number;
  readonly bends: number;
  readonly bendDegrees: number;
}

/** All that the hand needs to pull one circuit or feeder. */
export interface CircuitCard extends CardName {
  readonly kind: 'circuit' | 'feeder';
  /** As on the door card, `P1-10/12`; the name of the charger or feeder where the panel has no space for it. */
  readonly circuit: string;
  readonly from: string;
  readonly to: string;
  readonly breakerAmps: number | null;
  readonly conductors: readonly string[];
  readonly colors: readonly string[];
  /** Length to cut each to, whole feet. */
  readonly feet: number;
  readonly reels: readonly string[];
  /** In the order of the pull. */
  readonly conduits: readonly CardConduit[];
  /** What a feeder goes through, which has no conduits of its own names. */
  readonly through: readonly string[];
  /** Circuits that share a conduit with it, as on the door card. */
  readonly neighbours: readonly string[];
  /** Where it can be reached on the way: "PB01, pull point". */
  readonly openings: readonly string[];
  readonly hard: readonly HardPull[];
}

/** What lies in one conduit. */
export interface ConduitCard extends CardName, Omit<CardConduit, 'id'> {
  readonly kind: 'conduit';
  readonly contents: readonly {
    /** As on the door card; of a grounding conductor its use. */
    readonly circuit: string;
    readonly charger: string | null;
    readonly conductors: readonly string[];
    readonly colors: readonly string[];
    /** Length to cut each to, whole feet. */
    readonly feet: number | null;
  }[];
  readonly fillPercent: number;
  readonly fillLimit: number;
  /** Raceways that it lies along. */
  readonly raceways: readonly string[];
  readonly hard: HardPull | null;
}

export type PullCard = CircuitCard | ConduitCard;

/** Every card of a lot: feeders and circuits in the order in which a crew pulls them, then conduits. */
export const pullCards = kept((site: Site, plan: Plan): readonly PullCard[] => {
  const pulls = pullSchedule(site, plan);
  const conduits = new Map(plan.conduits.map((conduit) => [conduit.id, conduit]));
  const hard = kept(() => new Map(plan.conduits.map((conduit) => [conduit.id, hardPull(site, conduit)])));
  const shared = { site, plan, conduits, hard };
  const ownPulls = new Map(pulls.filter(({ kind }) => kind === 'circuit').map((pull) => [pull.of, pull]));
  const greens = new Map(
    pulls.flatMap((pull) => (pull.kind === 'grounding' ? pull.through.map((id) => [id, pull] as const) : [])),
  );
  return [
    ...pulls.flatMap((pull) => (pull.kind === 'grounding' ? [] : [circuitCard(shared, pull)])),
    ...plan.conduits.map((conduit) => conduitCard(shared, conduit, ownPulls, greens)),
  ];
});

/** One card of a lot; undefined where it has none of that name. */
export const pullCard = (site: Site, plan: Plan, { kind, id }: CardName): PullCard | undefined =>
  byName(pullCards(site, plan)).get(`${kind} ${id}`);

const byName = kept(
  (cards: readonly PullCard[]): ReadonlyMap<string, PullCard> =>
    new Map(cards.map((card) => [`${card.kind} ${card.id}`, card])),
);

interface Shared {
  readonly site: Site;
  readonly plan: Plan;
  readonly conduits: ReadonlyMap<string, Conduit>;
  readonly hard: () => ReadonlyMap<string, HardPull | null>;
}

function circuitCard({ site, plan, conduits, hard }: Shared, pull: ScheduledPull): CircuitCard {
  const names = circuitNames(site);
  const named = (id: string): string => names.get(id) ?? id;
  const own = pull.kind === 'circuit' ? pull.through.flatMap((id) => conduits.get(id) ?? []) : [];
  const beside = new Set(own.flatMap(({ circuits }) => circuits).filter((id) => id !== pull.of));
  const breakers = breakersOf(plan);
  return {
    kind: pull.kind === 'feeder' ? 'feeder' : 'circuit',
    id: pull.of,
    circuit: named(pull.of),
    from: pull.from,
    to: pull.to,
    breakerAmps: breakers.get(pull.of) ?? null,
    conductors: pull.conductors,
    colors: pull.colors,
    feet: pull.feet,
    reels: pull.reels,
    conduits: own.map(cardConduit),
    through: pull.kind === 'feeder' ? pull.through : [],
    neighbours: [...beside].map(named),
    openings: own.slice(0, -1).map(({ to }) => openingWords(plan, to)),
    hard: own.flatMap(({ id }) => hard().get(id) ?? []),
  };
}

function conduitCard(
  { site, hard }: Shared,
  conduit: Conduit,
  pulls: ReadonlyMap<string, ScheduledPull>,
  greens: ReadonlyMap<string, ScheduledPull>,
): ConduitCard {
  const names = circuitNames(site);
  const green = greens.get(conduit.id);
  return {
    kind: 'conduit',
    ...cardConduit(conduit),
    contents: [
      ...conduit.circuits.map((charger) => ({
        circuit: names.get(charger) ?? charger,
        charger,
        conductors: pulls.get(charger)?.conductors ?? [],
        colors: pulls.get(charger)?.colors ?? [],
        feet: pulls.get(charger)?.feet ?? null,
      })),
      ...(green === undefined
        ? []
        : [
            {
              circuit: 'grounding',
              charger: null,
              conductors: green.conductors,
              colors: green.colors,
              feet: green.feet,
            },
          ]),
    ],
    fillPercent: conduit.fillPercent,
    fillLimit: conduit.fillLimit,
    raceways: conduit.raceways,
    hard: hard().get(conduit.id) ?? null,
  };
}

const cardConduit = ({ id, method, tradeSize, from, to, length, bends, bendDegrees }: Conduit): CardConduit => ({
  id,
  spec: racewaySpec(method, tradeSize),
  from,
  to,
  length,
  bends,
  bendDegrees,
});

const breakersOf = kept(
  (plan: Plan): ReadonlyMap<string, number> =>
    new Map([
      ...plan.supply.feeders.map(({ id, breakerAmps }) => [id, breakerAmps] as const),
      ...plan.circuits.map(({ charger, breakerAmps }) => [charger, breakerAmps] as const),
    ]),
);

const BOX_WORDS = { drop: 'box', junction: 'junction box', pullpoint: 'pull point' } as const;

function openingWords(plan: Plan, id: string): string {
  const kind = boxKinds(plan).get(id);
  return kind === undefined ? `${id}, coupling` : `${id}, ${kind}`;
}

const boxKinds = kept(
  (plan: Plan): ReadonlyMap<string, string> =>
    new Map([
      ...plan.boxes.map(({ id, kind }) => [id, BOX_WORDS[kind]] as const),
      ...plan.handholes.map(({ id }) => [id, 'handhole'] as const),
    ]),
);

/** A pull that is not within every limit at a glance; null where it is, and for what is not pulled through a conduit. */
function hardPull({ rules }: Site, conduit: Conduit): HardPull | null {
  const tables = tablesOf(rules);
  const { id, from, to, path, tradeSize, conductors } = conduit;
  if (tradeSize === null || isEasyPull(tables, conduit, rules.metal)) return null;
  const pull = pullTension(tables, path, tradeSize, conductors, rules.metal);
  return {
    conduit: id,
    towards: pull.isBack ? from : to,
    pounds: pull.tension,
    mostPounds: pull.mostTension,
    sidewall: pull.sidewall,
  };
}
