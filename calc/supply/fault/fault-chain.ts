import type { CodeTables } from '../../tables/code-tables.ts';
import { findImpedance } from '../../tables/conductor-of.ts';
import { FAULT_CONSTANTS } from '../../tables/fault-constants.ts';
import { SILENT, type Tell } from '../../words/explain.ts';
import { chainByImpedance } from './chain-by-impedance.ts';
import type { FaultChain, FaultPlace, FaultStep } from './fault-step.ts';
import { pointToPoint } from './point-to-point.ts';

/** What the conductor of a step has no figure for, in words; undefined where it has. */
export function lackingAt(tables: CodeTables, step: FaultStep, method: FaultChain['method']): string | undefined {
  if (step.kind !== 'conductor' || step.ohms !== undefined) return undefined;
  const { size, metal } = step.conductor;
  const found =
    method === 'impedance'
      ? findImpedance(tables, size, metal, step.raceway === 'steel' ? 'steel' : 'PVC')
      : FAULT_CONSTANTS.rows.find((row) => row.size === size);
  if (found !== undefined) return undefined;
  return `${method === 'impedance' ? tables.impedances.source : FAULT_CONSTANTS.source} has no ${size} ${metal}; give its ohms`;
}

/**
 * Available fault current after each step. RangeError for a conductor that the tables lack and for a step before a source.
 * Source of both methods: published worksheets; IEEE 141 and 242 for the addition of R and X (from memory).
 */
export function faultChain(tables: CodeTables, chain: FaultChain, tell: Tell = SILENT): readonly FaultPlace[] {
  return chain.method === 'impedance' ? chainByImpedance(tables, chain, tell) : pointToPoint(chain, tell);
}

export type { FaultChain, FaultPlace, FaultStep } from './fault-step.ts';
