import type { Charger, Site } from '../../../routing/site/site.ts';
import type { Device, SupplyEquipment } from '../../plan-file/supply.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { cited } from '../../tables/sections.ts';
import { type BoardMain, boardMain } from '../devices/board-main.ts';
import { linesOf, treeOf } from '../tree/supply-lines.ts';
import { atFeeder, type ConnectedLoad, chargerVa, connectedLoads } from './connected-lines.ts';
import { toNeutralAmps } from './neutral.ts';
import { type PanelCircuit, type PanelSchedule, panelSchedules } from './panel-schedule.ts';

/** A breaker of a panel as its schedule shows it. */
export interface CardCircuit extends PanelCircuit {
  /** What it serves: `EV03`, `F2 to P2`, `L1 Lights`. */
  readonly words: string;
  /** The same as a schedule describes it: `EV03, stall 05, 32 A charger`. */
  readonly description: string;
  /** Amperes of its breaker; null where none could be chosen. */
  readonly breakerAmps: number | null;
  readonly va: number;
  /** It was issued where it is. */
  readonly issued: boolean;
}

/** What is in a space: a pole of a breaker, 0 the first; a breaker whose circuit is gone (a spare); nothing (a space). */
export type CardCell =
  | { readonly kind: 'circuit'; readonly circuit: CardCircuit; readonly pole: number }
  | { readonly kind: 'spare'; readonly was: string; readonly pole: number }
  | { readonly kind: 'space' };

/** A row of the schedule: an odd space on the left, an even one on the right, both on one line. */
export interface CardRow {
  readonly line: 'A' | 'B' | 'C';
  readonly left: { readonly number: number; readonly cell: CardCell };
  readonly right: { readonly number: number; readonly cell: CardCell };
}

export interface DemandRow {
  readonly what: string;
  readonly connectedVa: number;
  readonly percent: number;
  readonly demandVa: number;
  readonly basis: string;
}

/** A panel's schedule as the trade draws it: what the page, the sheet and the drawing set show. */
export interface PanelCard {
  readonly schedule: PanelSchedule;
  /** What protects its busbar. */
  readonly main: BoardMain;
  readonly rows: readonly CardRow[];
  /** Breakers that found no space. */
  readonly homeless: readonly CardCircuit[];
  /** Connected volt-amperes by line. */
  readonly lineVa: readonly { readonly line: 'A' | 'B' | 'C'; readonly va: number }[];
  readonly connectedVa: number;
  /** Amperes of its loads from a line to neutral, and the share of third harmonic that is counted in them. */
  readonly toNeutral: { readonly amps: number; readonly thirdHarmonic: number };
  /** Spaces with a breaker and no circuit, and with nothing. */
  readonly spares: number;
  readonly blank: number;
  readonly demand: readonly DemandRow[];
  readonly demandVa: number;
  /** The same balanced over the lines, A. */
  readonly demandAmps: number;
}

/** No schedule is drawn with more spaces than these, but for those that are used. */
const MOST_SPACES = 252;
/** Rows that are offered where the number of a panel's spaces is not given. */
const ROWS_TO_COME = 3;

/** The schedule of every panel, in the order of `panelSchedules`. */
export function panelCards(site: Site, devices: readonly Device[], tables: CodeTables): readonly PanelCard[] {
  const [tree, lines] = [treeOf(site), linesOf(site)];
  const loads = connectedLoads(tree, lines, site.chargers, site.loads);
  const neutral = toNeutralAmps(tree, lines, site.loads);
  const words = circuitWords(site, devices, loads);
  return [...panelSchedules(site).values()].map((schedule) => {
    const place = tree.placeOf.get(schedule.equipment)!;
    const node = tree.nodes[place]!;
    const circuits = schedule.circuits.map((circuit): CardCircuit => {
      const own = site.issued.circuits.get(circuit.id);
      const issued = own?.panel === schedule.equipment && own.spaces?.join() === circuit.spaces.join();
      return { ...circuit, ...words(circuit), issued };
    });
    const load = loads[place]!;
    const demand = demandRows(load, node.equipment.managedAmps, tables);
    const demandVa = demand.reduce((sum, row) => sum + row.demandVa, 0);
    const rows = cardRows(schedule, circuits, site);
    const cells = rows.flatMap(({ left, right }) => [left.cell, right.cell]);
    return {
      schedule,
      main: boardMain(devices, schedule.equipment),
      rows,
      homeless: circuits.filter(({ spaces }) => spaces.length === 0),
      lineVa: (['A', 'B', 'C'] as const).flatMap((line, i) =>
        schedule.rows.includes(line) ? [{ line, va: load.lines[i]! }] : [],
      ),
      connectedVa: load.lines.reduce((sum, va) => sum + va, 0),
      toNeutral: { amps: neutral[place]!, thirdHarmonic: site.rules.thirdHarmonic },
      spares: cells.filter(({ kind }) => kind === 'spare').length,
      blank: cells.filter(({ kind }) => kind === 'space').length,
      demand,
      demandVa,
      demandAmps: demandVa / (node.system.volts * (node.system.phases === 3 ? Math.sqrt(3) : 1)),
    };
  });
}

type Words = Pick<CardCircuit, 'words' | 'description' | 'breakerAmps' | 'va'>;

function circuitWords(
  site: Site,
  devices: readonly Device[],
  loads: readonly ConnectedLoad[],
): (circuit: PanelCircuit) => Words {
  const { nodes } = treeOf(site);
  const lines = linesOf(site);
  const nodeOf = new Map(nodes.map((node) => [node.equipment.id, node]));
  const amps = new Map(devices.flatMap((device) => (isBranch(device) ? [[device.of, device.amps] as const] : [])));
  const outgoing = new Map(devices.map((device) => [device.id, device.amps]));
  const chargers = new Map(site.chargers.map((charger) => [charger.id, charger]));
  const others = new Map(site.loads.map((load) => [load.id, load]));
  const labels = new Map(site.stalls.map(({ id, label = id }) => [id, label]));
  const fed = new Map(nodes.flatMap((node, place) => (node.feeder === null ? [] : [[node.feeder.id, place] as const])));
  return ({ id, serves }) => {
    if (serves === 'charger') {
      const charger = chargers.get(id)!;
      return {
        words: id,
        description: [id, ...stallWords(charger, labels), `${charger.amps} A charger`].join(', '),
        breakerAmps: amps.get(id) ?? null,
        va: chargerVa(charger, nodeOf.get(charger.from)!),
      };
    }
    if (serves === 'load') {
      const { name, va } = others.get(id)!;
      const named = name === '' || name === id ? id : `${id} ${name}`;
      return { words: named, description: named, breakerAmps: amps.get(id) ?? null, va };
    }
    const place = fed.get(id)!;
    const node = nodes[place]!;
    const va = atFeeder(node, loads[place]!, lines).reduce((sum, one) => sum + one, 0);
    const named = `${id} to ${node.equipment.id}`;
    return { words: named, description: named, breakerAmps: outgoing.get(`${id}.from`) ?? null, va };
  };
}

/** The stalls of a charger as they are numbered on the pavement; nothing where it serves none. */
const stallWords = ({ stalls }: Charger, labels: ReadonlyMap<string, string>): readonly string[] =>
  stalls.length === 0
    ? []
    : [`${stalls.length === 1 ? 'stall' : 'stalls'} ${stalls.map((id) => labels.get(id) ?? id).join(' and ')}`];

const isBranch = ({ use }: Device): boolean => use === 'charger' || use === 'load';

const SPACE: CardCell = { kind: 'space' };

function cardRows(
  { equipment, rows, spaces }: PanelSchedule,
  circuits: readonly CardCircuit[],
  site: Site,
): readonly CardRow[] {
  const cells = new Map<number, CardCell>();
  for (const circuit of circuits)
    circuit.spaces.forEach((space, pole) => {
      cells.set(space, { kind: 'circuit', circuit, pole });
    });
  const drawn = new Set(circuits.map(({ id }) => id));
  const used = Math.max(0, ...cells.keys());
  const last = Math.min(spaces ?? used + 2 * ROWS_TO_COME, Math.max(used, MOST_SPACES));
  for (const [id, issued] of site.issued.circuits) {
    if (issued.panel !== equipment || drawn.has(id)) continue;
    issued.spaces?.forEach((space, pole) => {
      if (space <= last && !cells.has(space)) cells.set(space, { kind: 'spare', was: id, pole });
    });
  }
  return Array.from({ length: Math.ceil(Math.max(last, used) / 2) }, (_, i): CardRow => {
    const at = (number: number) => ({ number, cell: cells.get(number) ?? SPACE });
    return { line: rows[i % rows.length] as CardRow['line'], left: at(2 * i + 1), right: at(2 * i + 2) };
  });
}

/** Load by kind with what each is counted for. */
function demandRows(load: ConnectedLoad, managedAmps: number | undefined, tables: CodeTables): readonly DemandRow[] {
  const { factor } = tables.continuous;
  const source = cited(tables, 'feederDevice');
  const rows: DemandRow[] = [];
  if (load.chargerVa > 0) {
    const held = load.managedVa < load.chargerVa * (1 - 1e-9);
    const ceiling = managedAmps === undefined ? 'as load management holds them' : `managed to ${managedAmps} A`;
    rows.push({
      what: held ? `Chargers, continuous, ${ceiling}` : 'Chargers, continuous',
      connectedVa: load.chargerVa,
      percent: 100 * factor,
      demandVa: factor * load.managedVa,
      basis: held ? cited(tables, 'loadManagement') : source,
    });
  }
  const add = (what: string, va: number, percent: number): void => {
    if (va > 0) rows.push({ what, connectedVa: va, percent, demandVa: (percent / 100) * va, basis: source });
  };
  add('Other load, continuous', load.continuousVa, 100 * factor);
  add('Other load', load.otherVa, 100);
  return rows;
}

/** Greatest line current over the mean of the lines, less one, percent; 0 without load. */
export function unbalancePercent({ amps }: Pick<SupplyEquipment, 'amps'>, rows: string): number {
  const own = (['A', 'B', 'C'] as const).filter((line) => rows.includes(line)).map((line) => amps[line]);
  const mean = own.reduce((sum, one) => sum + one, 0) / own.length;
  return mean === 0 ? 0 : Math.max(0, 100 * (Math.max(...own) / mean - 1));
}
