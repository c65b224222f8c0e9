import type { CodeTables } from '../../tables/code-tables.ts';
import type { SupplyNode } from './supply-tree.ts';
import type { System } from './system.ts';

/** Whether a system is over the voltage at which the tables of low voltage end. */
const isOver = (tables: CodeTables, { volts }: System): boolean => volts > tables.lowVoltage.upToVolts;

/** Whether the feeder into a node is: on the primary of a transformer. Volts, amps and fault current are worked all the same. */
export const feederIsOver = (tables: CodeTables, { feeder, primary, system }: SupplyNode): boolean =>
  feeder !== null && isOver(tables, primary ?? system);

/** Whether what hangs on a node is. */
export const busIsOver = (tables: CodeTables, { system }: SupplyNode): boolean => isOver(tables, system);

/** Whether either side of a transformer is; of other equipment, whether it is. */
export const eitherIsOver = (tables: CodeTables, { system, primary }: SupplyNode): boolean =>
  isOver(tables, system) || (primary !== null && isOver(tables, primary));
