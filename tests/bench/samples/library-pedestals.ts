import type { Drop, Raceway, SiteFile } from '../../../routing/site/site.ts';
import { libraryLot } from './library-lot.ts';

/**
 * Pedestals stand on the stripes beside the middle of the cars, where 25 ft of cord laid round a car come to each of its
 * corners; from the heads of the stripes they do not.
 */
const BESIDE_CAR = 9;
const BESIDE_PICKUP = 11.5;
/** Those of the accessible stalls stand beyond them, clear of stall and access aisle. */
const BESIDE_ACCESSIBLE = -0.5;
/** Cords come out this high: no lower than 625.50 has connectors outdoors, for each foot of height is a foot of cord. */
const CORD_HEIGHT = 2;
const DEPTH = -2;
/** The trench passes beside the columns, so that its handholes open. */
const TRENCH = 0.5;

/**
 * The library lot served from pedestals with trenching instead of overhead drops: the same stalls, cars, panel and
 * feeder, so that the two can be compared. Invented.
 */
export function libraryPedestals(): SiteFile {
  const overhead = libraryLot();
  const raceways: Raceway[] = [
    {
      id: 'R1',
      path: [
        [-6, 0, 2],
        [-6, 0, DEPTH],
        [-6, TRENCH, DEPTH],
        [79, TRENCH, DEPTH],
      ],
      method: 'PVC40',
      place: 'underground',
    },
  ];
  const stallOf = new Map(overhead.chargers?.flatMap(({ drop, stalls }) => stalls.map((stall) => [drop, stall])));
  const drops = (overhead.drops ?? []).map((drop, i): Drop => {
    const stall = overhead.stalls?.find(({ id }) => id === stallOf.get(drop.id));
    const x = stall?.use === undefined ? drop.box[0] : BESIDE_ACCESSIBLE;
    const y = Math.sign(drop.box[1]) * (stall?.vehicle === 'pickup' ? BESIDE_PICKUP : BESIDE_CAR);
    raceways.push({
      id: `R${i + 2}`,
      path: [
        [x, TRENCH, DEPTH],
        [x, y, DEPTH],
        [x, y, CORD_HEIGHT],
      ],
      method: 'PVC80',
      place: 'underground',
    });
    return { id: drop.id, box: [x, y, CORD_HEIGHT], cord: 25, mount: 'pedestal', restHeight: CORD_HEIGHT };
  });
  const { members: _, pullpoints: __, ...rest } = overhead;
  return {
    ...rest,
    name: 'Alder Street Library lot, pedestals',
    note: `${overhead.note} The pedestals stand on the stripes beside the middle of the cars, not at the heads: a cord on the ground may be 25 ft long (625.17(C)) and goes round the car. They take room between the cars there, and two bollards guard each.`,
    raceways,
    drops,
  };
}
