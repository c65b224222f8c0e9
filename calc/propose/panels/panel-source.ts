import type { Equipment, Feeder, Rules, Site } from '../../../routing/site/site.ts';
import { designOf } from '../../branches/design.ts';
import { feederConductor } from '../../supply/feeders/feeder-conductor.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { transformerProtection } from '../../tables/equipment-of.ts';
import { standardRatingAtLeast } from '../../tables/protection-of.ts';
import { USUAL_PANELBOARD } from '../usual.ts';

/** What new panels are fed by: a source or service of their volts, or a three-phase one of higher through transformers. */
export interface PanelSource {
  readonly source: Equipment;
  readonly through: boolean;
}

/**
 * What can feed new panels: of the service equipment, or of the sources where none is drawn, the one of their voltage, else
 * the three-phase one of a higher that the tables go to. Null where there is none, or a choice.
 */
export function panelSource(site: Site): PanelSource | null {
  const { volts } = USUAL_PANELBOARD;
  const services = site.equipment.filter(({ kind }) => kind === 'service');
  const sources = services.length > 0 ? services : site.equipment.filter(({ kind }) => kind === 'source');
  const [same, another] = sources.filter((one) => one.volts === volts);
  if (same) return another ? null : { source: same, through: false };
  const { upToVolts } = designOf(site.rules).tables.lowVoltage;
  const [high, second] = sources.filter(
    ({ phases, volts: own = 0 }) => phases !== 1 && own > volts && own <= upToVolts,
  );
  return high && !second ? { source: high, through: true } : null;
}

/** Conductors of a proposed feeder: it lies in the ground. */
export const inTheGround = (rules: Rules, breakerAmps: number): Feeder['conductor'] =>
  feederConductor(designOf(rules).tables, breakerAmps, rules, rules.placeAmbientC.underground);

/** A transformer and the breaker ahead of it, its only protection. */
export interface TransformerSize {
  readonly kva: number;
  readonly breakerAmps: number;
}

/**
 * The least standard transformer that carries a line current at the volts of the panels; the breaker is what the code allows
 * as its only protection, or the next standard rating. Null where none is so large.
 */
export function transformerSize(tables: CodeTables, lineAmps: number, primaryVolts: number): TransformerSize | null {
  const needed = (Math.sqrt(3) * USUAL_PANELBOARD.volts * lineAmps) / 1000;
  const row = tables.threePhaseTransformers.rows.find(({ kva }) => kva >= needed);
  return row ? transformerFor(tables, row.kva, primaryVolts) : null;
}

/** A transformer of a size with the breaker ahead of it. */
export function transformerFor(tables: CodeTables, kva: number, primaryVolts: number): TransformerSize {
  const primary = (kva * 1000) / (Math.sqrt(3) * primaryVolts);
  const { primary: percent } = transformerProtection(tables, 'primary only', { primary, secondary: 0 });
  return { kva, breakerAmps: standardRatingAtLeast(tables, (percent / 100) * primary) };
}
