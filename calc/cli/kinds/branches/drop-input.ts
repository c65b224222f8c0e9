import * as v from 'valibot';
import type { DropConductor, DropMethod } from '../../../circuits/drop-conductor.ts';
import { findImpedance, hasResistance } from '../../../tables/conductor-of.ts';
import {
  metal,
  nonNegativeFigure,
  phases,
  positiveFigure,
  powerFactor,
  racewayKind,
  size,
  TABLES,
  wholeFigure,
} from '../fields.ts';

const conductor = v.strictObject({ size, metal, sets: v.optional(wholeFigure, 1) });

/** Input of a drop calculation with fields of its own besides; by resistance alone, raceway and power factor are idle. */
export const dropInput = <Own extends v.ObjectEntries>(own: Own) => {
  const shared = { phases, volts: positiveFigure, amps: nonNegativeFigure, conductor, ...own };
  return v.variant('method', [
    v.strictObject({
      method: v.literal('resistance'),
      raceway: v.optional(racewayKind),
      powerFactor: v.optional(powerFactor),
      ...shared,
    }),
    v.strictObject({ method: v.picklist(['impedance', 'exact']), raceway: racewayKind, powerFactor, ...shared }),
  ]);
};

/** What the tables lack for a conductor; undefined where they have all that the method needs. */
export function lackingFor(wanted: DropConductor, by: DropMethod): string | undefined {
  if (by.method === 'resistance')
    return hasResistance(TABLES, wanted.size) ? undefined : `${TABLES.conductors.source} has no size ${wanted.size}`;
  return findImpedance(TABLES, wanted.size, wanted.metal, by.raceway) === undefined
    ? `${TABLES.impedances.source} has no ${wanted.size} ${wanted.metal}`
    : undefined;
}
