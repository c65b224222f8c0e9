import type { Equipment, Site } from '../../../routing/site/site.ts';
import { designOf } from '../../branches/design.ts';
import { plan } from '../../plan/plan.ts';
import { ratingOf } from '../../supply/panels/demand.ts';
import { PILOT_FLOOR_AMPS } from '../../supply/panels/pilot-floor.ts';
import { treeOf } from '../../supply/tree/supply-lines.ts';
import { feedingVolts, panelsOf } from '../feeding.ts';
import { fullLineAmps, lineShare } from './charger-amps.ts';

/** A panel that stands, and how many more chargers it takes. */
export interface StandingPanel {
  readonly panel: Equipment;
  readonly room: number;
  /** What leaves it no more room. */
  readonly why: string;
}

/** A single-phase charger takes two spaces. */
const POLES = 2;
/** No panel is asked for more. */
const MOST = 200;

/**
 * How many more chargers each panel that stands takes: by its spaces, and by the amperes that are left in it and in all
 * that is ahead of it, chargers counted as the code does and those without a run as if they had one; under a ceiling, by
 * what their pilots can call for. What a rating is not given for does not bound it.
 */
export function standingPanels(site: Site): readonly StandingPanel[] {
  const panels = panelsOf(site);
  if (panels.length === 0) return [];
  const { tables } = designOf(site.rules);
  const { supply, runs } = plan(site);
  const tree = treeOf(site);
  const facts = new Map(supply.equipment.map((one) => [one.id, one]));
  const idle = new Set(runs.filter(({ length }) => length === null).map(({ charger }) => charger));
  const count = (id: string, only: (charger: string) => boolean): number =>
    site.chargers.filter((one) => one.from === id && only(one.id)).length;
  return panels.map((panel): StandingPanel => {
    const { id } = panel;
    const own = count(id, () => true);
    const waiting = count(id, (charger) => idle.has(charger));
    const bounds: { readonly room: number; readonly why: string }[] = [];
    const { spaces } = panel;
    if (spaces !== undefined) {
      const spare = facts.get(id)?.spareSpaces ?? spaces - POLES * own;
      bounds.push({ room: Math.floor(spare / POLES), why: `${id} has ${spaces} spaces` });
    }
    const volts = feedingVolts(panel);
    let isHeld = false;
    for (let place = tree.placeOf.get(id) ?? -1; place >= 0; place = tree.nodes[place]!.parent) {
      const { equipment, primary, feeder, system } = tree.nodes[place]!;
      if (equipment.managedAmps !== undefined && !isHeld) {
        isHeld = true;
        const ceiling = equipment.managedAmps;
        bounds.push({
          room: mostThat((n) => lineShare(own + n) * PILOT_FLOOR_AMPS <= ceiling),
          why: `${equipment.id} holds its chargers to ${ceiling} A`,
        });
      }
      // Under a ceiling more chargers draw no more.
      if (isHeld) continue;
      const fact = facts.get(equipment.id);
      const rating = primary === null ? ratingOf(tree, place) : feeder?.breakerAmps;
      if (rating === undefined || fact === undefined) continue;
      const counts = primary === null ? system.volts : primary.volts;
      const asked =
        primary === null
          ? Math.max(fact.demandAmps, fact.unitDemandAmps ?? 0)
          : (supply.feeders.find((one) => one.id === feeder?.id)?.demandAmps ?? 0);
      const { factor } = tables.continuous;
      const more = (n: number): number =>
        (factor * (fullLineAmps(tables, own + n) - fullLineAmps(tables, own - waiting)) * volts) / counts;
      bounds.push({
        room: mostThat((n) => asked + more(n) <= rating * (1 + 1e-9)),
        why: `${equipment.id} has ${rating} A`,
      });
    }
    const least = bounds.reduce((low, one) => (one.room < low.room ? one : low), { room: MOST, why: '' });
    return { panel, room: Math.max(0, least.room), why: least.why };
  });
}

/** The most of so many with which something holds; -1 where with none. */
function mostThat(holds: (n: number) => boolean): number {
  let n = -1;
  while (n < MOST && holds(n + 1)) n++;
  return n;
}
