import type { Point2, Site } from '../../../routing/site/site.ts';
import type { Ref } from '../../document/element-lists.ts';

const flat = (point: readonly number[] | undefined): Point2 | null => (point ? [point[0]!, point[1]!] : null);

/** The point of an element, or of a handle of it, that comes to lie on the grid when it is moved. Feet. */
export function anchorOf(site: Site, { list, id, part }: Ref): Point2 | null {
  switch (list) {
    case 'stalls':
      return flat(site.stalls.find((each) => each.id === id)?.at);
    case 'columns':
      return flat(site.columns.find((each) => each.id === id)?.at);
    case 'members':
      return flat(site.members.find((each) => each.id === id)?.from);
    case 'keepouts':
      return flat(site.keepouts.find((each) => each.id === id)?.outline[0]);
    case 'aisles':
      return flat(site.aisles.find((each) => each.id === id)?.outline[0]);
    case 'pullpoints':
      return flat(site.pullpoints.find((each) => each.id === id)?.at);
    case 'equipment': {
      const equipment = site.equipment.find((each) => each.id === id);
      return flat(part?.kind === 'entry' ? equipment?.entry : equipment?.at);
    }
    case 'raceways': {
      const path = site.raceways.find((each) => each.id === id)?.path;
      return flat(path?.[part?.kind === 'vertex' ? part.index : 0]);
    }
    case 'drops': {
      const drop = site.drops.find((each) => each.id === id);
      return flat(part?.kind === 'retractor' ? (drop?.retractor ?? drop?.box) : drop?.box);
    }
    case 'chargers':
    case 'feeders':
    case 'loads':
      return null;
  }
}

/** What rides on raceways is drawn to them: drops, pull points and the vertices of other raceways. */
export const RIDES: ReadonlySet<Ref['list']> = new Set(['drops', 'pullpoints', 'raceways']);
