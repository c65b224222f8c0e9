import { byId } from '../../routing/site/look-up.ts';
import type { Site, SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { plan } from '../plan/plan.ts';
import { USUAL_CHARGER } from '../propose/usual.ts';

/** What a study begins with: the lot without any way drawn in it, and what the ways are for. */
export interface StudyBase {
  readonly file: SiteFile;
  readonly site: Site;
  /** Ids of the stalls that are to be served: those that chargers serve as it is drawn, or all where none does. */
  readonly wanted: ReadonlySet<string>;
  /** Rating that is asked for: the most common of the chargers that are drawn, or a usual one. */
  readonly amps: number;
  /** A way was drawn in the file, and taken out of it here. */
  readonly isDrawn: boolean;
}

/**
 * A lot as it stands before the job: without drops, chargers, the raceways that only branches use, the pull points on
 * them, and what was measured, recorded or issued of them. Equipment and feeders stay as they are drawn, and so does all else.
 */
export function baseOf(file: SiteFile): StudyBase {
  const site = toSite(file);
  const isDrawn = site.chargers.length > 0;
  const served = new Set(site.chargers.flatMap(({ stalls }) => stalls));
  const wanted = served.size > 0 ? served : new Set(site.stalls.map(({ id }) => id));
  if (!isDrawn && site.drops.length === 0)
    return { file: withoutReferences(file), site, wanted, amps: USUAL_CHARGER.amps, isDrawn };
  const used = new Set(plan(site).runs.flatMap(({ raceways }) => raceways));
  const { drops: _, chargers: __, asBuilt: ___, issued: ____, pullpoints: _____, records: ______, ...rest } = file;
  const bare = withoutReferences({ ...rest, raceways: (file.raceways ?? []).filter(({ id }) => !used.has(id)) });
  return { file: bare, site: toSite(bare), wanted, amps: commonest(site.chargers.map(({ amps }) => amps)), isDrawn };
}

/** Days of charging keep their cars, not the chargers and limits that they name. */
function withoutReferences(file: SiteFile): SiteFile {
  if (file.days === undefined) return file;
  return {
    ...file,
    days: file.days.map(({ limits: _, search: __, ...day }) => ({
      ...day,
      ...(day.cars && { cars: day.cars.map(({ charger: ___, ...car }) => car) }),
    })),
  };
}

function commonest(amps: readonly number[]): number {
  const counts = new Map<number, number>();
  for (const one of amps) counts.set(one, (counts.get(one) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1] || a[0] - b[0])[0]?.[0] ?? USUAL_CHARGER.amps;
}

/** What is left of a lot where new boards are to stand: the service, and the loads that the new ones are to feed. */
export interface ClearedBase {
  readonly file: SiteFile;
  readonly loads: NonNullable<SiteFile['loads']>;
}

/**
 * A lot without its boards, the transformers and disconnects ahead of them, the feeders to all of these and the loads on
 * them; null where an inverter hangs on one.
 */
export function withoutBoards({ file }: StudyBase): ClearedBase | null {
  const all = file.equipment ?? [];
  const equipment = all.filter(({ kind }) => kind === 'source' || kind === 'service');
  if (all.some(({ kind }) => kind === 'inverter')) return null;
  const stays = byId(equipment);
  const loads = file.loads ?? [];
  return {
    file: {
      ...file,
      equipment,
      feeders: (file.feeders ?? []).filter(({ from, to }) => stays.has(from) && stays.has(to)),
      loads: loads.filter(({ from }) => stays.has(from)),
    },
    loads: loads.filter(({ from }) => !stays.has(from)),
  };
}
