import type { SiteFile } from '../../../routing/site/site.ts';
import { libraryLot } from '../../bench/samples/library-lot.ts';

const KEPT = ['D01', 'D02', 'D03', 'D04'];

/** A small lot with every kind of thing that a plan drawing has; names in several scripts. Feet. */
export function oursFile(): SiteFile {
  const lot = libraryLot();
  return {
    ...lot,
    name: 'Парковка 充电 "A"^M %%u',
    // No other sheet changes how many there are.
    drawings: { sheets: ['plan', 'enlarged'] },
    drops: lot.drops!.filter(({ id }) => KEPT.includes(id)),
    chargers: lot.chargers!.filter(({ drop }) => KEPT.includes(drop)),
    notes: [{ id: 'N1', at: [20, 40], text: 'Stub-up by the owner', to: [10, 20] }],
    dimensions: [{ id: 'DIM1', from: [0, -14], to: [23.5, -14], offset: -3 }],
    clouds: [
      {
        id: 'CL1',
        outline: [
          [60, -18],
          [60, -10],
          [70, -10],
          [70, -18],
        ],
        mark: 'B7',
      },
    ],
  };
}

/** The same with its gridlines turned, so that its sheets lie otherwise than its model. */
export const turnedFile = (): SiteFile => {
  const file = oursFile();
  return { ...file, gridlines: { ...file.gridlines, origin: [3, -5], rotation: 30 } };
};
