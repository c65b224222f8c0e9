import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { plan } from '../../plan/plan.ts';
import { buildPhases } from './build-phases.ts';

/**
 * A lot as it stands when a phase of its build-out is done: with the chargers and drops of that phase and those before it,
 * and what feeds them; later stalls are stalls without a charger. The file itself where nothing in it is for later.
 */
export function phaseFile(file: SiteFile, through: number): SiteFile {
  const site = toSite(file);
  const phases = buildPhases(site, plan(site));
  const stands = ({ id }: { readonly id: string }): boolean => (phases.get(id) ?? 1) <= through;
  const hung = new Set(site.chargers.map(({ drop }) => drop));
  const chargers = file.chargers?.filter(stands) ?? [];
  if (chargers.length === site.chargers.length) return file;
  const used = new Set(chargers.map(({ drop }) => drop));
  const kept = new Set(chargers.map(({ id }) => id));
  const isDrop = (id: string): boolean => used.has(id) || !hung.has(id);
  const { issued, asBuilt, days, ...rest } = file;
  const next: SiteFile = {
    ...rest,
    chargers,
    ...(file.drops && { drops: file.drops.filter(({ id }) => isDrop(id)) }),
    ...(file.equipment && { equipment: file.equipment.filter(stands) }),
    ...(file.feeders && { feeders: file.feeders.filter(stands) }),
    ...(file.raceways && { raceways: file.raceways.filter(stands) }),
    ...(asBuilt && { asBuilt: Object.fromEntries(Object.entries(asBuilt).filter(([drop]) => isDrop(drop))) }),
    ...(issued?.circuits && {
      issued: { circuits: Object.fromEntries(Object.entries(issued.circuits).filter(([id]) => kept.has(id))) },
    }),
    // Days keep their cars, not the chargers and limits that they name.
    ...(days && {
      days: days.map(({ limits: _, search: __, ...day }) => ({
        ...day,
        ...(day.cars && { cars: day.cars.map(({ charger: ___, ...car }) => car) }),
      })),
    }),
  };
  const loose = new Set(
    plan(toSite(next)).findings.flatMap(({ rule, about }) => (rule === 'loose-pull-point' ? about : [])),
  );
  return loose.size === 0 ? next : { ...next, pullpoints: (next.pullpoints ?? []).filter(({ id }) => !loose.has(id)) };
}
