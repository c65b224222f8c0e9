import type { SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { counted } from '../../routing/words/counted.ts';
import { plan } from '../plan/plan.ts';
import type { PriceList } from '../prices/price-list.ts';
import type { StudyBase } from './base.ts';
import type { FeederChoice } from './feeder-choices.ts';
import { type LayoutOutcome, routed, withAmps } from './layouts.ts';
import { type StandingFeeder, usedInBoard, usedSo } from './supplies.ts';

type Laid = Extract<LayoutOutcome, { readonly ok: true }>;

/** A layout on a standing feeder that is used in some way, with as many chargers as that is for. */
export function usedBy(
  base: StudyBase,
  layout: Laid,
  standing: StandingFeeder,
  choice: FeederChoice,
  prices: PriceList,
  mayGoOn: () => boolean,
): LayoutOutcome {
  const { amps, way, transformer, only } = choice;
  const fewer = only === null ? layout : withFewer(base, layout, only, prices, mayGoOn);
  if (!fewer.ok) return fewer;
  const file = withAmps(fewer.file, amps);
  // A ceiling that is drawn is let go where all run at full rate; nothing else of the feeder changes as it is.
  const made = transformer === 'in the board' ? usedInBoard(file, standing, way) : usedSo(file, standing, way);
  return made.ok ? { ...made, says: [...fewer.says, ...made.says] } : made;
}

/** So many chargers and no more: those of accessible stalls, then those with the shortest branches; raceways laid anew. */
function withFewer(
  base: StudyBase,
  layout: Laid,
  only: number,
  prices: PriceList,
  mayGoOn: () => boolean,
): LayoutOutcome {
  const site = toSite(layout.file);
  const lengths = new Map(plan(site).runs.map(({ charger, length }) => [charger, length ?? Number.POSITIVE_INFINITY]));
  const use = new Map(site.stalls.map((stall) => [stall.id, stall.use ?? 'standard']));
  const isAccessible = (stalls: readonly string[]): boolean => stalls.some((id) => use.get(id) !== 'standard');
  const kept = site.chargers
    .toSorted(
      (a, b) =>
        Number(isAccessible(b.stalls)) - Number(isAccessible(a.stalls)) || lengths.get(a.id)! - lengths.get(b.id)!,
    )
    .slice(0, only);
  const ids = new Set(kept.map(({ id }) => id));
  const drops = new Set(kept.map(({ drop }) => drop));
  const file: SiteFile = {
    ...layout.file,
    chargers: (layout.file.chargers ?? []).filter(({ id }) => ids.has(id)),
    drops: (layout.file.drops ?? []).filter(({ id }) => drops.has(id)),
    raceways: base.file.raceways ?? [],
    pullpoints: base.file.pullpoints ?? [],
  };
  const says = [...layout.says, `${counted(only, 'stall')} of ${base.wanted.size} are served.`];
  return routed(file, prices, says, mayGoOn);
}
