import type { SiteFile } from '../../../routing/site/site.ts';
import { MIDDLE, PITCH, RACEWAY_Z } from './hospital-sizes.ts';

/** Changes the element with this id; a wrong id is a fault of the generator and throws. */
function change<T extends { readonly id: string }>(
  list: readonly T[] | undefined,
  id: string,
  to: (element: T) => T,
): T[] {
  if (!list?.some((element) => element.id === id)) throw new RangeError(`no element ${id}`);
  return list.map((element) => (element.id === id ? to(element) : element));
}

/** The faults, each named after the finding it must raise. */
export function withFaults(lot: SiteFile): SiteFile {
  let { drops, chargers, columns, keepouts, raceways } = lot;
  // reach: a 15 ft cord cannot get round the car.
  drops = change(drops, 'D037', (drop) => ({ ...drop, cord: 15 }));
  // no-run: the box hangs 8 ft beyond the end of its raceway.
  drops = change(drops, 'D101', (drop) => ({
    ...drop,
    box: [drop.box[0], drop.box[1] - 8, RACEWAY_Z],
    retractor: [drop.box[0], drop.box[1] - 8, 10],
  }));
  // boxes-coincide: two boxes in one place.
  const shared = drops.find((drop) => drop.id === 'D160');
  drops = change(drops, 'D161', (drop) =>
    shared?.retractor ? { ...drop, box: shared.box, retractor: shared.retractor } : drop,
  );
  // over-vehicle: the retractor hangs over the middle of its stall.
  drops = change(drops, 'D200', (drop) => ({ ...drop, retractor: [drop.box[0] + 4.5, drop.box[1], 10] }));
  // cord-limit: a 30 ft cord.
  drops = change(drops, 'D210', (drop) => ({ ...drop, cord: 30 }));
  // branch-limit: this charger's listing allows 120 ft only.
  chargers = change(chargers, 'EV240', (charger) => ({ ...charger, branchLimit: 120 }));
  // cords-per-drop: two cords on a drop that holds one.
  chargers = change(chargers, 'EV221', (charger) => ({ ...charger, drop: 'D220' }));
  // keepout-crossed: a stair tower that the second trunk runs through.
  keepouts = [
    {
      id: 'K1',
      outline: [
        [268, 58],
        [272, 58],
        [272, 62],
        [268, 62],
      ],
      blocks: ['raceway'],
    },
  ];
  // working-space: a bollard in front of the second panel.
  columns = [...(columns ?? []), { id: 'BOL1', at: [MIDDLE, PITCH - 2], size: [0.5, 0.5], height: 3.5 }];
  // bends: the branch to one drop is offset round something that is no longer there.
  raceways = change(raceways, 'X1-3', (raceway) => ({
    ...raceway,
    path: [
      [27, -10, RACEWAY_Z],
      [27, 2, RACEWAY_Z],
      [29, 2, RACEWAY_Z],
      [29, 4, RACEWAY_Z],
      [27, 4, RACEWAY_Z],
      [27, 6, RACEWAY_Z],
      [25, 6, RACEWAY_Z],
      [25, 8, RACEWAY_Z],
      [27, 8, RACEWAY_Z],
      [27, 10, RACEWAY_Z],
    ],
  }));
  return {
    ...lot,
    ...(drops && { drops }),
    ...(chargers && { chargers }),
    ...(columns && { columns }),
    ...(raceways && { raceways }),
    keepouts,
  };
}
