import type { EquipmentKind } from '../../../routing/site/schema/vocabulary.ts';
import type { Device, SupplyEquipment } from '../../plan-file/supply.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { cited } from '../../tables/sections.ts';
import { mainIn } from '../devices/standing-in.ts';
import type { SupplyTree } from '../tree/supply-tree.ts';
import { type System, systemName } from '../tree/system.ts';
import { aheadOf } from './series-pairs.ts';

/** What a study of arc flash starts from at one piece of equipment. */
export interface ArcFlashInput {
  readonly id: string;
  readonly kind: EquipmentKind;
  /** `208Y/120 V`. */
  readonly system: string;
  /** Bolted fault current, three-phase where there are three lines, A; null where none is known. */
  readonly mostAmps: number | null;
  readonly leastAmps: number | null;
  readonly xr: number | null;
  /** True where the most is of an unlimited supply. */
  readonly isUnlimited: boolean;
  /** Its own main, which an arc behind it waits for; null where there is none. */
  readonly main: Device | null;
  /** The device ahead of all of it, which an arc before its main waits for; null where none is drawn. */
  readonly ahead: Device | null;
  /** From the arc to the face of who works there, inches. */
  readonly workingInches: number;
  /** What it is marked with until the study gives more. */
  readonly label: string;
}

/** Inches from the arc that such equipment is usually studied at: IEEE 1584-2018 Table 10, from memory. */
const WORKING: Readonly<Partial<Record<EquipmentKind, number>>> = { switchboard: 24, service: 24 };
const USUAL = 18;
/** Where these distances are from. */
export const WORKING_SOURCE = 'IEEE 1584-2018 Table 10, from memory: 24 in switchboards, 18 in panelboards and others';
/** What is said of the gap between electrodes, which no drawing shows. */
export const GAP_WORDS = 'to be set by the study';

const ROOT_3 = Math.sqrt(3);

/** Every piece of equipment but sources and transformers, in the order of the tree, with what a study of arc flash starts from. */
export function arcFlashInputs(
  tree: SupplyTree,
  devices: readonly Device[],
  supply: readonly SupplyEquipment[],
  tables: CodeTables,
): readonly ArcFlashInput[] {
  const solved = new Map(supply.map((one) => [one.id, one]));
  return tree.nodes.flatMap(({ equipment: { id, kind, busAmps }, system }): ArcFlashInput[] => {
    if (kind === 'source' || kind === 'transformer') return [];
    const fault = solved.get(id)?.fault;
    const main = mainIn(devices, id);
    const known = main === undefined || main.known === 'missing' ? null : main;
    // Seen from a branch of the board: its main, or what stands ahead where it has none.
    const outside = aheadOf(tree, devices, known ?? branchAt(id, system));
    const rating = busAmps ?? known?.amps ?? null;
    return [
      {
        id,
        kind,
        system: systemName(system),
        mostAmps: fault?.most ?? null,
        leastAmps: fault === undefined ? null : boltedLeast(fault.least.lineToLine, system),
        xr: fault?.xr ?? null,
        isUnlimited: fault?.isUnlimited === true,
        main: known,
        ahead: outside?.ahead ?? null,
        workingInches: WORKING[kind] ?? USUAL,
        label: arcFlashLabel(id, rating, tables),
      },
    ];
  });
}

/** Bolted current of three lines by that of two, which is sqrt 3 / 2 of it; of two where there are no more. */
const boltedLeast = (lineToLine: number, { phases }: System): number =>
  phases === 3 ? (2 / ROOT_3) * lineToLine : lineToLine;

/** A device that stands for whatever hangs on a busbar. */
const branchAt = (at: string, { volts }: System): Device => ({
  id: `${at} bus`,
  use: 'load',
  at,
  of: at,
  protects: [],
  amps: null,
  lines: 'ABC',
  poles: 3,
  volts,
  known: 'assumed',
  existing: false,
});

/** The warning of the code, and the label with a date where the equipment is large. */
function arcFlashLabel(id: string, amps: number | null, tables: CodeTables): string {
  const { fromAmps } = tables.arcFlashLabel;
  const dated =
    amps !== null && amps >= fromAmps
      ? `; at ${fromAmps} A and more the label of the study, with the date it is put on (${cited(tables, 'arcFlashDated')}, from memory)`
      : '';
  return `WARNING: arc flash and shock hazard at ${id}. Arc-flash study required before work on it energized${dated}`;
}
