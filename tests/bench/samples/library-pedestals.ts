import type { Drop, Raceway, SiteFile } from '../../../routing/site/site.ts';
import { libraryLot } from './library-lot.ts';

/** Pedestals stand on the stripes, this far from the line on which the cars' heads meet. */
const OFFSET = 1;
const DEPTH = -2;
/** The trench passes beside the columns and the pedestals, so that its handholes open. */
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
  const drops = (overhead.drops ?? []).map((drop, i): Drop => {
    const [x, y] = drop.box;
    const at = [x, Math.sign(y) * OFFSET] as const;
    raceways.push({
      id: `R${i + 2}`,
      path: [
        [at[0], TRENCH, DEPTH],
        [at[0], at[1], DEPTH],
        [at[0], at[1], 3],
      ],
      method: 'PVC80',
      place: 'underground',
    });
    return { id: drop.id, box: [at[0], at[1], 3], cord: 25, mount: 'pedestal', restHeight: 3 };
  });
  const { members: _, pullpoints: __, ...rest } = overhead;
  return { ...rest, name: 'Alder Street Library lot, pedestals', raceways, drops };
}
