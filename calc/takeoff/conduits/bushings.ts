import type { Method } from '../../../routing/site/schema/vocabulary.ts';
import { isBoxConductor } from '../../branches/boxes/box-volume.ts';
import type { ConduitConductor } from '../../plan-file/branches.ts';
import { byWords, takeoffKind } from '../../prices/kind.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import type { Aloft } from '../high.ts';
import type { Add } from '../tally.ts';

/** Methods whose connectors have no insulated throat. Common practice, no source. */
const BARE: ReadonlySet<Method> = new Set(['RMC', 'IMC', 'PVC40', 'PVC80']);

const bushingKind = byWords((tradeSize) =>
  takeoffKind({
    item: 'bushing',
    spec: `insulating, ${tradeSize} in`,
    unit: 'each',
    basis:
      'one at each end of a threaded or plastic conduit with a conductor of 4 AWG or larger; connectors of others come with an insulated throat',
  }),
);

/** Bushings at `ends` of a conduit, where a conductor in it is 4 AWG or larger. */
export function addBushings(
  tables: CodeTables,
  method: Method,
  tradeSize: string | null,
  conductors: readonly ConduitConductor[],
  of: string,
  ends: number,
  aloft: Aloft,
  add: Add,
): void {
  if (tradeSize === null || !BARE.has(method)) return;
  if (conductors.every(({ size }) => isBoxConductor(tables, size))) return;
  add(bushingKind(tradeSize, ''), of, ends, aloft);
}
