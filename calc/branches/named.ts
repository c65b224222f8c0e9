import { kept } from '../../routing/kept/kept.ts';
import type { Circuit, Conduit } from '../plan-file/branches.ts';
import { type OpeningLoad, openingLoads } from './boxes/opening-load.ts';
import { drawnPath } from './drawn-path.ts';
import type { HomeRun } from './home-runs/home-run.ts';
import type { Occupant } from './home-runs/member.ts';
import type { ConduitOpening } from './home-runs/piece.ts';
import { type ConduitWay, legAt, NO_LENGTH } from './way.ts';

/** A circuit as far as its own branch decides it: all but what the supply gives. */
export type BranchCircuit = Omit<Circuit, 'phases' | 'totalDropPercent' | 'worstDropPercent' | 'voltsAtBox'> & {
  readonly way: ConduitWay;
  readonly branch: Occupant;
};

/** A home run with its conduits and circuits under the names that the plan uses. */
export interface NamedHomeRun {
  readonly homeRun: HomeRun;
  /** `P1-3`: the third home run of P1. */
  readonly id: string;
  readonly circuits: readonly BranchCircuit[];
  /** Name of the conduit of each of its pieces. */
  readonly conduitIds: readonly string[];
  /** Of each circuit, the names of the junctions on its way, from the equipment on; put together when they are asked for. */
  readonly junctions: readonly (readonly string[])[];
  /** One for each of its pieces, put together when they are asked for. */
  readonly conduits: readonly Conduit[];
  /** What it brings into boxes, put together when it is asked for. */
  readonly openings: readonly OpeningLoad[];
}

/** Names a home run: conduits `P1-3.1`, `P1-3.2`, junctions `P1-3.J1`, couplings in the ground `P1-3.C1`. The same objects as long as the names are the same. `issued` are the names of its conduits where they are not these, `junctions` for each piece that of the junction at its end. */
export const named = kept(
  (
    homeRun: HomeRun,
    equipment: string,
    number: number,
    issued: readonly string[] | null,
    junctions: readonly string[] | null,
  ): NamedHomeRun => new Named(homeRun, `${equipment}-${number}`, issued, junctions),
);

/** One of thousands: a getter of its own in each would make each an object of its own shape. */
class Named implements NamedHomeRun {
  readonly homeRun: HomeRun;
  readonly id: string;
  readonly circuits: readonly BranchCircuit[];
  readonly conduitIds: readonly string[];
  readonly #junctionNames: readonly string[] | null;
  #junctions: NamedHomeRun['junctions'] | null = null;
  #conduits: NamedHomeRun['conduits'] | null = null;
  #openings: NamedHomeRun['openings'] | null = null;

  constructor(homeRun: HomeRun, id: string, issued: readonly string[] | null, junctions: readonly string[] | null) {
    this.homeRun = homeRun;
    this.id = id;
    this.conduitIds = issued ?? homeRun.pieces.map((_, i) => `${id}.${i + 1}`);
    this.circuits = homeRun.ways.map((way, i) => circuitOf(homeRun, way, i, this.conduitIds));
    this.#junctionNames = junctions;
  }

  get junctions(): NamedHomeRun['junctions'] {
    const { ways, pieces } = this.homeRun;
    this.#junctions ??= ways.map((_, circuit) =>
      pieces
        .filter(({ members, end }) => end.kind === 'junction' && members.includes(circuit))
        .sort((a, b) => a.from - b.from)
        .map(({ end }) => this.#nameOf(end)),
    );
    return this.#junctions;
  }

  get conduits(): NamedHomeRun['conduits'] {
    this.#conduits ??= this.conduitIds.map((id, i) =>
      conduitOf(this.homeRun, i, id, (opening) => this.#nameOf(opening)),
    );
    return this.#conduits;
  }

  get openings(): NamedHomeRun['openings'] {
    this.#openings ??= openingLoads(this.homeRun, this.conduitIds, (opening) => this.#nameOf(opening));
    return this.#openings;
  }

  #nameOf({ kind, id: own }: ConduitOpening): string {
    if (kind === 'coupling') return `${this.id}.C${own}`;
    if (kind !== 'junction') return own;
    const names = this.#junctionNames;
    const at = names === null ? -1 : this.homeRun.pieces.findIndex(({ end }) => end.kind === kind && end.id === own);
    return at < 0 ? `${this.id}.J${own}` : names![at]!;
  }
}

function conduitOf(
  { ways, pieces, packings }: HomeRun,
  number: number,
  id: string,
  name: (opening: ConduitOpening) => string,
): Conduit {
  const piece = pieces[number]!;
  const way = ways[piece.along]!;
  const { method, bends, bendDegrees } = piece;
  const { tradeSize, conductors, fillPercent, fillLimit } = packings[number]!;
  return {
    id,
    method,
    tradeSize,
    length: piece.to - piece.from,
    circuits: piece.members.map((i) => ways[i]!.charger.id),
    conductors,
    fillPercent,
    fillLimit,
    bends,
    bendDegrees,
    from: name(piece.start),
    to: name(piece.end),
    path: drawnPath(way, piece),
    raceways: racewaysBetween(way, piece.from, piece.to),
  };
}

/** The raceways that a way lies on between two distances along it, in order. */
export function racewaysBetween(way: ConduitWay, from: number, to: number): readonly string[] {
  const ids: string[] = [];
  for (let leg = legAt(way, from); leg < way.legs.length && way.at[leg]! < to - NO_LENGTH; leg++) {
    const id = way.legs[leg]!;
    if (id !== '' && id !== ids.at(-1)) ids.push(id);
  }
  return ids;
}

function circuitOf(homeRun: HomeRun, way: ConduitWay, member: number, conduits: readonly string[]): BranchCircuit {
  const branch = homeRun.members[member]!;
  const { choice } = branch;
  const { pieces } = homeRun;
  const inside: number[] = [];
  for (let i = 0; i < pieces.length; i++) if (pieces[i]!.members.includes(member)) inside.push(i);
  if (!isAlong(pieces, inside)) inside.sort((a, b) => pieces[a]!.from - pieces[b]!.from);
  return {
    charger: way.charger.id,
    from: way.charger.from,
    breakerAmps: choice.breakerAmps,
    conductor: choice.conductor,
    grounding: choice.grounding,
    pilot: way.charger.pilot === true,
    currentCarrying: branch.currentCarrying,
    ambientC: branch.ambientC,
    factors: choice.factors,
    ampacity: choice.ampacity,
    sizedBy: choice.sizedBy,
    branchDropPercent: branch.dropPercent,
    conduits: inside.map((i) => conduits[i]!),
    way,
    branch,
  };
}

/** Some pieces stand as they follow each other from the equipment on, as they mostly do. */
function isAlong(pieces: HomeRun['pieces'], some: readonly number[]): boolean {
  for (let i = 1; i < some.length; i++) if (pieces[some[i - 1]!]!.from > pieces[some[i]!]!.from) return false;
  return true;
}
