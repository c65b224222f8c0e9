import { byId } from '../../routing/site/look-up.ts';
import { newId } from '../../routing/site/new-id.ts';
import { printLength } from '../../routing/site/numbers/feet-inches.ts';
import { metalOf } from '../../routing/site/schema/vocabulary.ts';
import type { Site, SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { designOf } from '../branches/design.ts';
import { feederConductor, unplacedAmbient } from '../supply/feeders/feeder-conductor.ts';
import type { FeederProspect } from '../supply/feeders/feeder-prospects.ts';
import { usualImpedance } from '../supply/feeders/feeder-trial.ts';
import { treeOf } from '../supply/tree/supply-lines.ts';
import type { SupplyTree } from '../supply/tree/supply-tree.ts';
import { standardRatingAtLeast } from '../tables/protection-of.ts';
import { lengthIn } from './in-file.ts';
import { equipmentId, equipmentInFile } from './new-equipment.ts';
import { transformerBeside } from './panels/feed-panels.ts';
import { USUAL_TRANSFORMER } from './usual.ts';

type FileEquipment = NonNullable<SiteFile['equipment']>[number];
type FileFeeder = NonNullable<SiteFile['feeders']>[number];

/** The site with a feeder used in some way, and what is to be known of it; or why it cannot be drawn so. */
export type FeederWaySite =
  | { readonly ok: true; readonly file: SiteFile; readonly says: readonly string[] }
  | { readonly ok: false; readonly says: string };

/**
 * The site with an existing feeder used in one of the ways that `feederProspects` tells: its voltage up to where its
 * system begins, the transformer at its far end with its secondary feeder and the board behind, the breaker ahead, and
 * the ceiling of load management where not all run at full rate. What has to change beyond that is said.
 * @param length of the feeder as it is, feet, kept where it was routed
 */
export function feederWaySite(file: SiteFile, id: string, way: FeederProspect, length: number): FeederWaySite {
  const site = toSite(file);
  const tree = treeOf(site);
  const feeder = byId(site.feeders).get(id);
  const place = feeder === undefined ? undefined : tree.placeOf.get(feeder.to);
  const node = place === undefined ? undefined : tree.nodes[place];
  if (feeder === undefined || place === undefined || node?.feeder !== feeder)
    return { ok: false, says: `${id} feeds nothing.` };
  if (way.kva === null && node.primary !== null)
    return { ok: false, says: `${feeder.to} would have to be taken away: draw that by hand.` };
  const says: string[] = [];
  const changes = new Map<string, Partial<FileEquipment>>();
  const change = (name: string, patch: Partial<FileEquipment>): void => {
    changes.set(name, { ...changes.get(name), ...patch });
  };

  const volts = tree.nodes[node.parent]!.system.volts;
  if (Math.abs(way.volts - volts) > 1) {
    const chain = ahead(tree, node.parent);
    const branching = chain.find((one) => feedsOthers(site, tree, one, id, chain));
    if (branching !== undefined)
      return {
        ok: false,
        says: `${tree.nodes[branching]!.equipment.id} feeds other things at ${volts} V: a system of ${way.volts} V beside it is to be drawn by hand.`,
      };
    for (const one of chain) {
      const { equipment, primary } = tree.nodes[one]!;
      if (primary !== null) change(equipment.id, { secondaryVolts: way.volts });
      else change(equipment.id, { volts: way.volts });
    }
    const names = chain.map((one) => tree.nodes[one]!.equipment.id).join(', ');
    says.push(
      `${names} at ${way.volts} V: a service, devices and boards for that voltage, and an available fault current asked anew.`,
    );
  }
  const root = tree.nodes[ahead(tree, node.parent).at(-1)!]!.equipment;
  const voltsChange = changes.size > 0;

  let next: SiteFile = file;
  const behind = new Set([feeder.to, ...beyond(tree, place)]);
  if (way.kva === null && voltsChange) for (const name of behind) change(name, { volts: way.chargerVolts });
  const breakerAmps = way.transformerBreakerAmps ?? feeder.breakerAmps;
  if (way.kva !== null && node.primary === null) {
    const added = withTransformer(next, site, id, way, length, breakerAmps);
    if (!added.ok) return added;
    next = added.file;
    says.push(...added.says);
    if (added.boardAmps !== null) {
      const { mainAmps = 0, busAmps = 0 } = node.equipment;
      if (mainAmps < added.boardAmps || busAmps < added.boardAmps) {
        change(feeder.to, { mainAmps: added.boardAmps, busAmps: Math.max(busAmps, added.boardAmps) });
        says.push(`${feeder.to} becomes a board of ${added.boardAmps} A.`);
      }
    }
    change(feeder.to, { volts: way.chargerVolts });
  } else if (way.kva !== null) {
    change(feeder.to, {
      kva: way.kva,
      primaryVolts: way.volts,
      secondaryVolts: way.chargerVolts,
      ...(node.equipment.kva !== way.kva && {
        impedancePercent: usualImpedance(designOf(site.rules).tables, way.kva),
      }),
    });
  }
  if (way.managedAmps !== null) {
    change(feeder.to, { managedAmps: way.managedAmps });
    says.push(`Load management holds the chargers of ${feeder.to} to ${way.managedAmps} A.`);
  }
  const ceilings = [...behind].filter((name) => byId(site.equipment).get(name)?.managedAmps !== undefined);
  const letGo = new Set(way.managedAmps === null ? ceilings : []);
  if (letGo.size > 0) says.push(`The ceilings of ${[...letGo].join(', ')} are let go: all run at full rate.`);
  const stay = ceilings.filter((name) => !letGo.has(name) && name !== feeder.to);
  if (stay.length > 0) says.push(`The ceilings of ${stay.join(', ')} stay beside it.`);
  next = {
    ...next,
    equipment: (next.equipment ?? []).map((one) => changed(one, changes.get(one.id), letGo, voltsChange, root.id)),
    feeders: (next.feeders ?? []).map((one) => (one.id === id ? { ...one, breakerAmps } : one)),
    ...(way.kva === null && voltsChange && { chargers: chargersAt(next, behind, way.chargerVolts) }),
  };
  return { ok: true, file: next, says };
}

/** From what feeds a feeder up to where its system begins: a source, or a transformer. */
function ahead({ nodes }: SupplyTree, from: number): readonly number[] {
  const chain: number[] = [];
  for (let place = from; place >= 0; place = nodes[place]!.parent) {
    chain.push(place);
    if (nodes[place]!.primary !== null) break;
  }
  return chain;
}

/** Whether equipment of a chain feeds anything but the next of it, or the feeder. */
function feedsOthers(
  site: Site,
  { nodes }: SupplyTree,
  place: number,
  feeder: string,
  chain: readonly number[],
): boolean {
  const { id } = nodes[place]!.equipment;
  return (
    nodes.some((node, i) => node.parent === place && node.feeder?.id !== feeder && !chain.includes(i)) ||
    [...site.chargers, ...site.loads].some(({ from }) => from === id)
  );
}

/** What hangs beyond a place at its voltage: no further than the next transformer. */
function beyond({ nodes }: SupplyTree, from: number): readonly string[] {
  const inside = new Set([from]);
  nodes.forEach((node, place) => {
    if (inside.has(node.parent) && node.primary === null) inside.add(place);
  });
  return [...inside].map((place) => nodes[place]!.equipment.id);
}

type Added =
  | { readonly ok: true; readonly file: SiteFile; readonly says: readonly string[]; readonly boardAmps: number | null }
  | { readonly ok: false; readonly says: string };

/** A transformer at the far end of a feeder, and a feeder from it to the board that the first one fed. */
function withTransformer(
  file: SiteFile,
  site: Site,
  id: string,
  way: FeederProspect,
  length: number,
  breakerAmps: number,
): Added {
  const { tables } = designOf(site.rules);
  const feeder = byId(site.feeders).get(id)!;
  const board = byId(site.equipment).get(feeder.to)!;
  const placed = transformerBeside(site, board.entry, way.volts);
  if (placed === null) return { ok: false, says: `No free place was found for a transformer beside ${board.id}.` };
  const kva = way.kva!;
  const name = equipmentId(file, 'T');
  const { size, entryHeight, ...rest } = USUAL_TRANSFORMER;
  const transformer = equipmentInFile(
    name,
    {
      kind: 'transformer',
      ...rest,
      kva,
      impedancePercent: usualImpedance(tables, kva),
      primaryVolts: way.volts,
      secondaryVolts: way.chargerVolts,
      size: [...size],
      at: [...placed.at],
      ...(placed.rotation !== 0 && { rotation: placed.rotation }),
      entry: [placed.at[0], placed.at[1], entryHeight],
    },
    file.units,
  );
  const rated = (kva * 1000) / (Math.sqrt(3) * way.chargerVolts);
  const boardAmps = standardRatingAtLeast(tables, tables.continuous.factor * rated);
  const conductor = feederConductor(tables, boardAmps, site.rules, unplacedAmbient(site.rules));
  const [x, y, z] = board.entry;
  const far = Math.abs(placed.at[0] - x) + Math.abs(placed.at[1] - y) + Math.abs(entryHeight - z);
  const secondary: FileFeeder = {
    id: newId(file, 'F'),
    from: name,
    to: board.id,
    conductor: { ...conductor, metal: metalOf(conductor.metal) },
    raceway: 'EMT',
    length: lengthIn(file.units, far),
    breakerAmps: boardAmps,
  };
  const known = lengthIn(file.units, length);
  return {
    ok: true,
    boardAmps,
    file: {
      ...file,
      equipment: [...(file.equipment ?? []), transformer],
      feeders: [
        ...(file.feeders ?? []).map((one) => (one.id === id ? { ...one, to: name, length: known } : one)),
        secondary,
      ],
    },
    says: [
      `${name}, ${kva} kVA, ${way.volts} V to ${way.chargerVolts} V, beside ${board.id}, ${breakerAmps} A ahead of it and ${boardAmps} A behind; its impedance is what its size usually has, until the nameplate is known.`,
      `The length of ${id} is kept at ${printLength(length, site.units)}.`,
    ],
  };
}

const REPLACED = ['volts', 'busAmps', 'mainAmps', 'kva', 'primaryVolts', 'secondaryVolts'] as const;

function changed(
  one: FileEquipment,
  patch: Partial<FileEquipment> | undefined,
  letGo: ReadonlySet<string>,
  voltsChange: boolean,
  root: string,
): FileEquipment {
  if (patch === undefined && !letGo.has(one.id)) return one;
  const next: FileEquipment = { ...one, ...patch };
  // Equipment for other volts or amperes is another piece, to be bought.
  if (patch !== undefined && REPLACED.some((field) => field in patch && patch[field] !== one[field]))
    delete (next as { existing?: boolean }).existing;
  if (letGo.has(one.id)) delete (next as { managedAmps?: number }).managedAmps;
  if (voltsChange && one.id === root) {
    delete (next as { faultAmps?: number }).faultAmps;
    delete (next as { faultXr?: number }).faultXr;
  }
  return next;
}

const chargersAt = (file: SiteFile, from: ReadonlySet<string>, volts: number): NonNullable<SiteFile['chargers']> =>
  (file.chargers ?? []).map((charger) => (from.has(charger.from) ? { ...charger, volts } : charger));
