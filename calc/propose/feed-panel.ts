import { bestPlace } from '../../routing/propose/equipment/best-place.ts';
import { frameDegrees, lotFrame } from '../../routing/propose/raceways/lot-frame.ts';
import { byId } from '../../routing/site/look-up.ts';
import { newId } from '../../routing/site/new-id.ts';
import type { Equipment, Feeder, Point3, Site, SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { designOf } from '../branches/design.ts';
import { feederConductor } from '../supply/feeders/feeder-conductor.ts';
import { usualImpedance } from '../supply/feeders/feeder-trial.ts';
import { voltsToGround } from '../supply/panels/working-needs.ts';
import { threePhaseSystem } from '../supply/tree/system.ts';
import {
  leastWorkingSpace,
  standardRatingAtLeast,
  transformerProtection,
  workingSpaceDepth,
} from '../tables/lookup.ts';
import { equipmentId, equipmentInFile } from './new-equipment.ts';
import { USUAL_CHARGER, USUAL_PANELBOARD, USUAL_TRANSFORMER } from './usual.ts';

/** How new panels are fed: straight from a source of their voltage, or from a higher one through a transformer beside them. */
export interface PanelSource {
  readonly source: Equipment;
  /** Breaker of the feeder that leaves the source, and its conductors. */
  readonly breakerAmps: number;
  readonly conductor: Feeder['conductor'];
  /** Of the transformer; null where there is none. */
  readonly kva: number | null;
}

/** Of the line current of chargers in equal numbers on three pairs of lines, amperes. */
const lineAmpsOf = (chargers: number): number => USUAL_CHARGER.amps * Math.sqrt(3) * Math.ceil(chargers / 3);

/** Conductors of a proposed feeder: it lies in the ground. */
const inTheGround = ({ rules }: Site, breakerAmps: number): Feeder['conductor'] =>
  feederConductor(designOf(rules).tables, breakerAmps, rules, rules.placeAmbientC.underground);

/**
 * What can feed panels of so many chargers each: of the service equipment, or of the sources where none is drawn, the one
 * of their voltage, else the three-phase one of a higher that the tables go to, through a transformer of the next standard
 * size; its breaker is what the code allows as its only protection, or the next standard rating. Null where there is none, or
 * a choice.
 */
export function panelSource(site: Site, chargers: number): PanelSource | null {
  const { volts, mainAmps } = USUAL_PANELBOARD;
  const services = site.equipment.filter(({ kind }) => kind === 'service');
  const sources = services.length > 0 ? services : site.equipment.filter(({ kind }) => kind === 'source');
  const [same, another] = sources.filter((one) => one.volts === volts);
  if (same)
    return another ? null : { source: same, breakerAmps: mainAmps, conductor: inTheGround(site, mainAmps), kva: null };
  const { tables } = designOf(site.rules);
  const { upToVolts } = tables.lowVoltage;
  const [high, second] = sources.filter(
    ({ phases, volts: own = 0 }) => phases !== 1 && own > volts && own <= upToVolts,
  );
  if (!high || second) return null;
  const needed = (Math.sqrt(3) * volts * lineAmpsOf(chargers)) / 1000;
  const row = tables.threePhaseTransformers.rows.find(({ kva }) => kva >= needed);
  if (!row) return null;
  const primary = (row.kva * 1000) / (Math.sqrt(3) * high.volts!);
  const { primary: percent } = transformerProtection(tables, 'primary only', { primary, secondary: 0 });
  const breakerAmps = standardRatingAtLeast(tables, (percent / 100) * primary);
  return { source: high, breakerAmps, conductor: inTheGround(site, breakerAmps), kva: row.kva };
}

/** The file with a panel fed by what can, and how in words. */
export function feedPanel(
  file: SiteFile,
  panel: string,
  from: PanelSource | null,
): { readonly file: SiteFile; readonly says: string } {
  const { volts, mainAmps } = USUAL_PANELBOARD;
  if (!from) {
    const some = (file.equipment ?? []).some(({ kind }) => kind === 'source');
    return {
      file,
      says: `${panel} has no feeder: ${some ? 'which source is to feed it is not this proposal’s to say' : `no source is drawn that could feed ${volts} V`}.`,
    };
  }
  const { source, breakerAmps, conductor, kva } = from;
  if (kva === null) {
    const { file: next, id } = withFeeder(file, source.id, panel, breakerAmps, conductor);
    return { file: next, says: `${id} feeds ${panel} from ${source.id}, ${breakerAmps} A.` };
  }
  const site = toSite(file);
  const { entry } = byId(site.equipment).get(panel)!;
  const placed = transformerBeside(site, [entry[0], entry[1], entry[2]], source.volts!);
  if (!placed) return { file, says: `${panel} has no feeder: no free place was found for its transformer.` };
  const id = equipmentId(file, 'T');
  const impedancePercent = usualImpedance(designOf(site.rules).tables, kva);
  const { size, entryHeight, ...rest } = USUAL_TRANSFORMER;
  const transformer: Omit<Equipment, 'id'> = {
    kind: 'transformer',
    ...rest,
    kva,
    impedancePercent,
    primaryVolts: source.volts!,
    secondaryVolts: volts,
    size: [...size],
    at: [...placed.at],
    ...(placed.rotation !== 0 && { rotation: placed.rotation }),
    entry: [...placed.at, entryHeight],
  };
  const stood: SiteFile = {
    ...file,
    equipment: [...(file.equipment ?? []), equipmentInFile(id, transformer, file.units)],
  };
  const primary = withFeeder(stood, source.id, id, breakerAmps, conductor);
  const secondary = withFeeder(primary.file, id, panel, mainAmps, inTheGround(site, mainAmps));
  return {
    file: secondary.file,
    says: `${id}, ${kva} kVA, ${source.volts} V to ${volts} V, stands by ${panel}: ${primary.id} feeds it from ${source.id}, ${breakerAmps} A, and ${secondary.id} the panel, ${mainAmps} A. Its impedance, ${impedancePercent} %, is a guess until the nameplate is known.`,
  };
}

/** Left clear round a transformer for its air, feet. Common practice, no source; its listing governs. */
const AIR = 0.5;

/** A free place for a transformer near what it feeds; null where none was found. */
export function transformerBeside(site: Site, panel: Point3, primaryVolts: number) {
  const { size, entryHeight } = USUAL_TRANSFORMER;
  const [width, depth, height] = size;
  const clear: [number, number, number] = [width + 2 * AIR, depth + 2 * AIR, height];
  const ground = voltsToGround(threePhaseSystem(primaryVolts));
  // Whatever comes to stand opposite.
  const { tables } = designOf(site.rules);
  const least = leastWorkingSpace(tables);
  const workingSpace = workingSpaceDepth(tables, ground, 'live') ?? least.depth;
  const make = { id: ' T', kind: 'transformer', size: clear, entryHeight, workingSpace, least } as const;
  return bestPlace(site, lotFrame(site), frameDegrees(site), [panel], make, Number.POSITIVE_INFINITY, null);
}

function withFeeder(
  file: SiteFile,
  from: string,
  to: string,
  breakerAmps: number,
  conductor: Feeder['conductor'],
): { readonly file: SiteFile; readonly id: string } {
  const id = newId(file, 'F');
  return { file: { ...file, feeders: [...(file.feeders ?? []), { id, from, to, conductor, breakerAmps }] }, id };
}
