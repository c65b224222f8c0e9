import type { Rules } from '../../routing/site/site.ts';
import type { Method } from '../../routing/site/vocabulary.ts';
import type { PackedPiece } from '../conduits/home-run.ts';
import { PILOT_SIZE } from '../conduits/home-run.ts';
import type { NamedHomeRun } from '../conduits/named.ts';
import { NO_LENGTH } from '../conduits/way.ts';
import type { PhasePair } from '../plan-shape.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import { supportSpacing } from '../tables/lookup.ts';
import { GROUNDING_COLOR, lineColors } from './line-colors.ts';
import { conductorSpec, racewaySpec, STICK } from './spec.ts';
import { type Kind, type Tally, tallying } from './tally.ts';

/** Conduit this short between boxes needs no strap of its own, ft. */
const UNSTRAPPED = 2;

type Add = (kind: Kind, of: string, quantity: number) => void;

/** Conductors, breakers, conduits and their fittings of one home run, before waste. */
export function homeRunQuantities(
  tables: CodeTables,
  rules: Rules,
  homeRun: NamedHomeRun,
  phases: readonly PhasePair[],
): Tally {
  const { add, tally } = tallying();
  addConductors(rules, homeRun, phases, add);
  homeRun.homeRun.pieces.forEach((piece, i) => {
    addRaceway(tables, homeRun, piece, homeRun.conduits[i]!.id, add);
  });
  return tally;
}

function addConductors(
  rules: Rules,
  { homeRun, circuits, conduits }: NamedHomeRun,
  phases: readonly PhasePair[],
  add: Add,
): void {
  const { metal, insulation, allowance } = rules;
  circuits.forEach(({ way, conductor, breakerAmps, pilot }, i) => {
    const { charger } = way;
    const length = way.length + allowance.equipment + allowance.box;
    const spec = conductorSpec(conductor.size, metal, insulation);
    const colors = lineColors(phases[i]!, charger.volts);
    for (const color of colors) {
      add(
        {
          item: 'conductor',
          spec: `${spec}, ${color}`,
          unit: 'ft',
          basis: 'one of each line of a circuit: its run and the allowances at equipment and box',
        },
        charger.id,
        length,
      );
    }
    if (pilot)
      add(
        {
          item: 'pilot conductor',
          spec: conductorSpec(PILOT_SIZE, 'copper', insulation),
          unit: 'ft',
          basis: 'one of each circuit with a pilot: its run and the allowances at equipment and box',
        },
        charger.id,
        length,
      );
    add(
      {
        item: 'breaker',
        spec: `${colors.length}-pole ${breakerAmps} A`,
        unit: 'each',
        basis: 'one of each circuit: 125% of its amps at the next standard rating',
      },
      charger.id,
      1,
    );
  });
  homeRun.pieces.forEach((piece, i) => {
    const grounding = piece.conductors.find(({ use }) => use === 'grounding');
    if (grounding === undefined) return;
    const ends =
      (piece.start.kind === 'equipment' ? allowance.equipment : 0) + (piece.end.kind === 'drop' ? allowance.box : 0);
    add(
      {
        item: 'grounding conductor',
        spec: `${conductorSpec(grounding.size, metal, insulation)}, ${GROUNDING_COLOR}`,
        unit: 'ft',
        basis: 'one in each conduit, shared by its circuits: its length and the allowances at equipment and box',
      },
      conduits[i]!.id,
      piece.to - piece.from + ends,
    );
  });
}

function addRaceway(
  tables: CodeTables,
  { homeRun, id }: NamedHomeRun,
  piece: PackedPiece,
  conduit: string,
  add: Add,
): void {
  const { method, tradeSize, start, end } = piece;
  const spec = racewaySpec(method, tradeSize);
  const length = piece.to - piece.from;
  const way = homeRun.ways[piece.along]!;
  add({ item: 'raceway', spec, unit: 'ft', basis: 'length of the conduits, taken square at corners' }, conduit, length);

  // Straights between the corners inside the piece.
  const corners = way.at.filter(
    (at, i) => way.turns[i]! > 0 && at > piece.from + NO_LENGTH && at < piece.to - NO_LENGTH,
  );
  const stops = [piece.from, ...corners, piece.to];
  const elbow = method === 'LFMC' ? null : { item: 'elbow', unit: 'each', basis: 'one at each corner of a conduit' };
  let couplings = 0;
  for (let i = 0; i + 1 < stops.length; i++)
    couplings += Math.max(0, Math.ceil((stops[i + 1]! - stops[i]!) / STICK - 1e-9) - 1);
  way.turns.forEach((turn, i) => {
    if (elbow === null || turn === 0 || !corners.includes(way.at[i]!)) return;
    add({ ...elbow, spec: `${spec} ${elbowName(turn)}` }, conduit, 1);
    couplings += 2;
  });
  if (method !== 'LFMC')
    add(
      {
        item: 'coupling',
        spec,
        unit: 'each',
        basis: `between ${STICK} ft sticks of each straight, and two at each elbow`,
      },
      conduit,
      couplings,
    );
  if (method !== 'tray') add({ item: 'connector', spec, unit: 'each', basis: 'two of each conduit' }, conduit, 2);
  add(
    {
      item: method === 'tray' ? 'tray support' : 'strap',
      spec,
      unit: 'each',
      basis: 'code spacing along each conduit above ground, the first within the code distance of each end',
    },
    conduit,
    straps(tables, method, tradeSize, exposedLength(piece, homeRun.ways[piece.along]!)),
  );
  if (end.kind === 'junction') add(JUNCTION, `${id}.J${end.id}`, 1);
  if (start.kind === 'junction' && piece.from <= NO_LENGTH)
    throw new RangeError('a conduit begins at a junction at the entry');
}

const JUNCTION: Kind = {
  item: 'junction box',
  spec: 'on the raceway',
  unit: 'each',
  basis: 'one where circuits of a conduit part or the method changes, away from boxes and pull points',
};

function elbowName(degrees: number): string {
  if (degrees > 67.5) return '90';
  return degrees > 37.5 ? '45' : 'offset';
}

const exposedLength = (
  piece: PackedPiece,
  way: { readonly at: readonly number[]; readonly places: readonly string[] },
): number => {
  let length = 0;
  way.places.forEach((place, leg) => {
    if (place === 'underground') return;
    length += Math.max(0, Math.min(piece.to, way.at[leg + 1]!) - Math.max(piece.from, way.at[leg]!));
  });
  return length;
};

/** Straps on a straight of so many feet: one within the code distance of each end, the rest at the code spacing. */
export function straps(tables: CodeTables, method: Method, tradeSize: string | null, length: number): number {
  if (length <= UNSTRAPPED) return 0;
  const { spacingFt, firstFt } = supportSpacing(tables, method, tradeSize);
  return Math.max(0, Math.ceil((length - 2 * firstFt) / spacingFt - 1e-9)) + 1;
}
