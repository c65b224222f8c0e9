import type { Drop, Equipment, Site } from '../../routing/site/site.ts';

const FEEDS: ReadonlySet<Equipment['kind']> = new Set(['panelboard', 'switchboard']);

/** Equipment that feeds chargers, or can. */
export const panelsOf = (site: Site): readonly Equipment[] => site.equipment.filter(({ kind }) => FEEDS.has(kind));

/** The equipment that is asked for, else the panel nearest to a drop, else anything that is there; null on none. */
export function feedingOf(site: Site, { box }: Pick<Drop, 'box'>, from: string): Equipment | null {
  const asked = site.equipment.find(({ id }) => id === from);
  if (asked) return asked;
  const panels = panelsOf(site);
  const far = ({ entry }: Equipment): number => Math.hypot(entry[0] - box[0], entry[1] - box[1]);
  const [nearest] = (panels.length > 0 ? panels : site.equipment).toSorted((a, b) => far(a) - far(b));
  return nearest ?? null;
}

/** Line to line, where chargers hang. */
export const feedingVolts = ({ volts, secondaryVolts }: Equipment): number => volts ?? secondaryVolts ?? 208;
