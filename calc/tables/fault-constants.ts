import type { CodeTable } from './table.ts';

/** C of the point-to-point method: 1 / (ohms of one conductor per foot), three single conductors in a raceway, 600 V. */
export interface FaultConstantRow {
  readonly size: string;
  readonly copper: { readonly steel: number; readonly nonmagnetic: number };
  readonly aluminum: { readonly steel: number; readonly nonmagnetic: number };
}

export const FAULT_CONSTANTS: CodeTable<FaultConstantRow> = {
  source: 'C constants of the point-to-point method, as printed in public handbooks',
  verified:
    'Copper, and aluminum in nonmagnetic raceway to 500 kcmil, read on published worksheets; each implies the resistance of Chapter 9 Table 8 at 25 °C and a smooth reactance.',
  doubts: [
    'Aluminum in steel, and aluminum of 600 to 1000 kcmil, are from memory.',
    'Printings differ by 1 in the last digit; 3 AWG copper in steel is 4760 or 4774.',
  ],
  rows: [
    { size: '14', copper: { steel: 389, nonmagnetic: 389 }, aluminum: { steel: 237, nonmagnetic: 237 } },
    { size: '12', copper: { steel: 617, nonmagnetic: 617 }, aluminum: { steel: 376, nonmagnetic: 376 } },
    { size: '10', copper: { steel: 981, nonmagnetic: 982 }, aluminum: { steel: 599, nonmagnetic: 599 } },
    { size: '8', copper: { steel: 1557, nonmagnetic: 1559 }, aluminum: { steel: 951, nonmagnetic: 952 } },
    { size: '6', copper: { steel: 2425, nonmagnetic: 2430 }, aluminum: { steel: 1481, nonmagnetic: 1482 } },
    { size: '4', copper: { steel: 3806, nonmagnetic: 3826 }, aluminum: { steel: 2346, nonmagnetic: 2350 } },
    { size: '3', copper: { steel: 4774, nonmagnetic: 4811 }, aluminum: { steel: 2952, nonmagnetic: 2961 } },
    { size: '2', copper: { steel: 5907, nonmagnetic: 6044 }, aluminum: { steel: 3713, nonmagnetic: 3730 } },
    { size: '1', copper: { steel: 7293, nonmagnetic: 7493 }, aluminum: { steel: 4645, nonmagnetic: 4678 } },
    { size: '1/0', copper: { steel: 8925, nonmagnetic: 9317 }, aluminum: { steel: 5777, nonmagnetic: 5838 } },
    { size: '2/0', copper: { steel: 10755, nonmagnetic: 11424 }, aluminum: { steel: 7187, nonmagnetic: 7301 } },
    { size: '3/0', copper: { steel: 12844, nonmagnetic: 13923 }, aluminum: { steel: 8826, nonmagnetic: 9110 } },
    { size: '4/0', copper: { steel: 15082, nonmagnetic: 16673 }, aluminum: { steel: 10741, nonmagnetic: 11174 } },
    { size: '250', copper: { steel: 16483, nonmagnetic: 18594 }, aluminum: { steel: 12122, nonmagnetic: 12862 } },
    { size: '300', copper: { steel: 18177, nonmagnetic: 20868 }, aluminum: { steel: 13910, nonmagnetic: 14923 } },
    { size: '350', copper: { steel: 19704, nonmagnetic: 22737 }, aluminum: { steel: 15484, nonmagnetic: 16813 } },
    { size: '400', copper: { steel: 20566, nonmagnetic: 24297 }, aluminum: { steel: 16671, nonmagnetic: 18506 } },
    { size: '500', copper: { steel: 22185, nonmagnetic: 26706 }, aluminum: { steel: 18756, nonmagnetic: 21391 } },
    { size: '600', copper: { steel: 22965, nonmagnetic: 28033 }, aluminum: { steel: 20093, nonmagnetic: 23451 } },
    { size: '750', copper: { steel: 24137, nonmagnetic: 29735 }, aluminum: { steel: 21766, nonmagnetic: 25976 } },
    { size: '1000', copper: { steel: 25278, nonmagnetic: 31491 }, aluminum: { steel: 23478, nonmagnetic: 28779 } },
  ],
};
