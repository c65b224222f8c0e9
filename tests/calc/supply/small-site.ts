import type { BranchOhms } from '../../../calc/branches/equipment-branches.ts';
import { feedsOf } from '../../../calc/branches/feeds.ts';
import { supplyChecks } from '../../../calc/checks/supply/supply-checks.ts';
import { type SupplyResult, supplyOf } from '../../../calc/supply/supply.ts';
import { NEC_2023 } from '../../../calc/tables/nec-2023/nec-2023.ts';
import type { Run } from '../../../routing/network/run.ts';
import type { Charger, Equipment, Feeder, Load, Raceway, Site, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';

export const equipment = (id: string, kind: Equipment['kind'], rest: Partial<Equipment> = {}): Equipment => ({
  id,
  kind,
  at: [0, 0],
  size: [1, 1, 1],
  entry: [0, 0, 0],
  ...rest,
});

export const source = (volts: number): Equipment => equipment('SVC', 'source', { volts });

export const panel = (id: string, rest: Partial<Equipment> = {}): Equipment =>
  equipment(id, 'panelboard', { volts: 208, ...rest });

/** 150 kVA, 480 to 208 V. */
export const transformer = (id: string, rest: Partial<Equipment> = {}): Equipment =>
  equipment(id, 'transformer', {
    kva: 150,
    primaryVolts: 480,
    secondaryVolts: 208,
    impedancePercent: 4.5,
    xr: 2,
    ...rest,
  });

/** 3/0 copper, 200 A, 100 ft unless said otherwise. */
export const feeder = (from: string, to: string, rest: Partial<Feeder> = {}): Feeder => ({
  id: `F-${to}`,
  from,
  to,
  conductor: { size: '3/0', metal: 'copper', sets: 1, insulation: 'XHHW-2' },
  raceway: 'PVC40',
  length: 100,
  breakerAmps: 200,
  ...rest,
});

export const load = (from: string, id: string, rest: Partial<Load> = {}): Load => ({
  id,
  from,
  name: id,
  volts: 120,
  phases: 1,
  va: 1200,
  continuous: true,
  ...rest,
});

/** Single-phase chargers EV1, EV2, ... of 32 A at 208 V. */
export const chargers = (from: string, count: number, rest: Partial<Charger> = {}): Charger[] =>
  Array.from({ length: count }, (_, i) => ({
    id: `EV-${from}-${i + 1}`,
    drop: 'D',
    stalls: [],
    from,
    amps: 32,
    volts: 208,
    phases: 1,
    ...rest,
  }));

export interface Parts {
  readonly equipment: readonly Equipment[];
  readonly feeders?: readonly Feeder[];
  readonly loads?: readonly Load[];
  readonly chargers?: readonly Charger[];
  readonly raceways?: readonly Raceway[];
  readonly rules?: SiteFile['rules'];
}

export const siteOf = (parts: Parts): Site =>
  toSite({
    format: 'overrow/site',
    version: 1,
    units: 'ft',
    name: 'test',
    drops: [{ id: 'D', box: [0, 0, 10], cord: 25 }],
    ...parts,
  } as SiteFile);

/** Ohms of 100 ft of 8 AWG copper, near enough. */
export const BRANCH: BranchOhms = { r: 0.078, x: 0.005 };

/** The supply of a site in which every charger has a run, but for those that are named. */
export function supplied(
  site: Site,
  without: readonly string[] = [],
  branch: BranchOhms = BRANCH,
): ReturnType<typeof supplyOf> {
  const runs = site.chargers.map(({ id }) => ({ charger: id, length: without.includes(id) ? null : 90 }) as Run);
  const ohms = site.chargers.map(({ id }) => (without.includes(id) ? null : branch));
  const supply = supplyOf(site, runs, ohms, NEC_2023);
  const byEquipment = feedsOf(site.chargers).partition.places.map((places) => places.map((place) => ohms[place]!));
  return { ...supply, findings: supplyChecks(site, supply, byEquipment, []) };
}

export const rulesOf = (result: SupplyResult): string[] => result.findings.map(({ rule }) => rule);
