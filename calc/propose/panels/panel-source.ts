import type { Metal } from '../../../routing/site/schema/vocabulary.ts';
import type { Equipment, Feeder, Rules, Site } from '../../../routing/site/site.ts';
import { designOf } from '../../branches/design.ts';
import { feederConductor } from '../../supply/feeders/feeder-conductor.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { circularMils } from '../../tables/conductor-of.ts';
import { transformerProtection } from '../../tables/equipment-of.ts';
import { standardRatingAtLeast } from '../../tables/protection-of.ts';
import { USUAL_PANELBOARD } from '../usual.ts';

/** What new panels are fed by: a source or service of their volts, or a three-phase one of higher through transformers. */
export interface PanelSource {
  readonly source: Equipment;
  readonly through: boolean;
}

/**
 * What can feed new panels: of the service equipment, or of the sources where none is drawn, the one of their voltage, and
 * the three-phase one of a higher that the tables go to, in this order. Empty where there is none, or several of the
 * panels' voltage, which is not a proposal's to choose among.
 */
export function panelSources(site: Site): readonly PanelSource[] {
  const { volts } = USUAL_PANELBOARD;
  const services = site.equipment.filter(({ kind }) => kind === 'service');
  const sources = services.length > 0 ? services : site.equipment.filter(({ kind }) => kind === 'source');
  const [same, another] = sources.filter((one) => one.volts === volts);
  if (another) return [];
  const { upToVolts } = designOf(site.rules).tables.lowVoltage;
  const [high, second] = sources.filter(
    ({ phases, volts: own = 0 }) => phases !== 1 && own > volts && own <= upToVolts,
  );
  return [
    ...(same ? [{ source: same, through: false }] : []),
    ...(high && !second ? [{ source: high, through: true }] : []),
  ];
}

/** Feeders of aluminum are no smaller. Common practice, no source. */
const LEAST_ALUMINUM = '1/0';

/** Conductors of a proposed feeder: it lies in the ground. */
export function inTheGround(rules: Rules, breakerAmps: number, metal: Metal = rules.metal): Feeder['conductor'] {
  const { tables } = designOf(rules);
  const conductor = feederConductor(tables, breakerAmps, { ...rules, metal }, rules.placeAmbientC.underground);
  const mils = (size: string): number => circularMils(tables, size);
  return metal === 'aluminum' && mils(conductor.size) < mils(LEAST_ALUMINUM)
    ? { ...conductor, size: LEAST_ALUMINUM }
    : conductor;
}

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
