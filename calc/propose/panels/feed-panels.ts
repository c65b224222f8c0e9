import { placeFinder } from '../../../routing/propose/equipment/place-finder.ts';
import { byId } from '../../../routing/site/look-up.ts';
import { newId } from '../../../routing/site/new-id.ts';
import type { Equipment, Feeder, Point3, Site, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { designOf } from '../../branches/design.ts';
import { voltsToGround } from '../../supply/panels/working-needs.ts';
import { threePhaseSystem } from '../../supply/tree/system.ts';
import { leastWorkingSpace, workingSpaceDepth } from '../../tables/equipment-of.ts';
import { equipmentId, equipmentInFile } from '../new-equipment.ts';
import { USUAL_PANELBOARD, USUAL_TRANSFORMER } from '../usual.ts';
import { inTheGround, type PanelSource, transformerSize } from './panel-source.ts';
import { type PanelWeights, transformerPiece } from './panel-weights.ts';
import { transformerGroups } from './transformer-groups.ts';

/** A new panel that wants a feeder. */
export interface NewPanel {
  readonly id: string;
  readonly mainAmps: number;
  readonly chargers: number;
}

interface Fed {
  readonly file: SiteFile;
  /** How each panel is fed, in words. */
  readonly says: readonly string[];
}

/**
 * The file with feeders into new panels: straight from a source of their volts, or through transformers, one for as many
 * panels as is cheapest, beside the panel of them that is nearest to the source.
 */
export function feedPanels(
  file: SiteFile,
  panels: readonly NewPanel[],
  from: PanelSource | null,
  weights: PanelWeights,
  isShared: boolean,
): Fed {
  if (from === null) {
    const some = (file.equipment ?? []).some(({ kind }) => kind === 'source');
    const why = some
      ? 'which source is to feed it is not this proposal’s to say'
      : `no source is drawn that could feed ${USUAL_PANELBOARD.volts} V`;
    return { file, says: panels.map(({ id }) => `${id} has no feeder: ${why}.`) };
  }
  const { rules } = toSite(file);
  const { source } = from;
  let next = file;
  const says: string[] = [];
  if (!from.through) {
    for (const { id: panel, mainAmps } of panels) {
      const { file: fed, id } = withFeeder(
        next,
        source.id,
        panel,
        mainAmps,
        inTheGround(rules, mainAmps, weights.metal),
      );
      next = fed;
      says.push(`${id} feeds ${panel} from ${source.id}, ${mainAmps} A.`);
    }
    return { file: next, says };
  }
  const entries = byId(toSite(file).equipment);
  const placed = panels.map((panel) => ({ ...panel, at: entries.get(panel.id)!.entry }));
  const { tables } = designOf(rules);
  for (const group of transformerGroups(placed, source, weights, tables, isShared)) {
    const { kva, breakerAmps } = transformerSize(tables, group.lineAmps, source.volts!)!;
    const near = group.panels[0]!;
    const place = transformerBeside(toSite(next), near.at, source.volts!);
    const names = group.panels.map(({ id }) => id);
    if (place === null) {
      says.push(
        `${listed(names)} ${names.length === 1 ? 'has' : 'have'} no feeder: of the places that were looked at none is free for a transformer.`,
      );
      continue;
    }
    const id = equipmentId(next, 'T');
    const piece = transformerPiece(rules, kva, source);
    const stood = equipmentInFile(
      id,
      {
        ...piece,
        at: [...place.at],
        ...(place.rotation !== 0 && { rotation: place.rotation }),
        entry: [...place.at, USUAL_TRANSFORMER.entryHeight],
      },
      next.units,
    );
    next = { ...next, equipment: [...(next.equipment ?? []), stood] };
    const primary = withFeeder(next, source.id, id, breakerAmps, inTheGround(rules, breakerAmps, weights.metal));
    next = primary.file;
    const secondaries = group.panels.map(({ id: panel, mainAmps }) => {
      const secondary = withFeeder(next, id, panel, mainAmps, inTheGround(rules, mainAmps, weights.metal));
      next = secondary.file;
      return `${secondary.id} ${panel}, ${mainAmps} A`;
    });
    says.push(
      `${id}, ${kva} kVA, ${source.volts} V to ${USUAL_PANELBOARD.volts} V, stands by ${near.id}: ${primary.id} feeds it from ${source.id}, ${breakerAmps} A, and ${listed(secondaries)}. Its impedance, ${piece.impedancePercent} %, is a guess until the nameplate is known.`,
    );
  }
  return { file: next, says };
}

const listed = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;

/** Left clear round a transformer for its air, feet. Common practice, no source; its listing governs. */
const AIR = 0.5;

/** So near to the panel behind it does a transformer stand where there is room, feet. */
const NEAR = 12;

/**
 * Tells whether a transformer finds a place beside a new panel. One place is asked about for one group of panels after the
 * other: what was found once with the same panels standing is kept.
 */
export function roomFinder(site: Site): (now: Site, panel: Omit<Equipment, 'id'>, primaryVolts: number) => boolean {
  const known = new Map<string, boolean>();
  return (now, panel, primaryVolts) => {
    const fresh = [...now.equipment.slice(site.equipment.length), panel];
    const key = JSON.stringify(fresh.map(({ at, rotation = 0 }) => [at, rotation]));
    const has = known.get(key);
    if (has !== undefined) return has;
    const stood = { ...now, equipment: [...now.equipment, { ...panel, id: ' P' }] };
    const found = transformerBeside(stood, panel.entry, primaryVolts, NEAR) !== null;
    known.set(key, found);
    return found;
  };
}

/** The free place for a transformer that is nearest to what it feeds; null where none is. */
export function transformerBeside(site: Site, panel: Point3, primaryVolts: number, most = Number.POSITIVE_INFINITY) {
  const { size, entryHeight } = USUAL_TRANSFORMER;
  const [width, depth, height] = size;
  const clear: [number, number, number] = [width + 2 * AIR, depth + 2 * AIR, height];
  const ground = voltsToGround(threePhaseSystem(primaryVolts));
  // Whatever comes to stand opposite.
  const { tables } = designOf(site.rules);
  const least = leastWorkingSpace(tables);
  const workingSpace = workingSpaceDepth(tables, ground, 'live') ?? least.depth;
  return placeFinder(site, { kind: 'transformer', size: clear, entryHeight, workingSpace, least }).find(
    [{ at: panel, circuits: 1 }],
    { most, fedBy: null, by: [], trench: 0, gaps: { along: 0, at: [] }, step: 1 },
  );
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
