import type { CodeTable } from '../table.ts';

/** Pounds per 1,000 ft of one conductor, by metal and covering; null where that size is not made or was not found. */
export interface ConductorWeightRow {
  readonly size: string;
  readonly copper: { readonly nylon: number; readonly linked: number; readonly bare: number };
  readonly aluminum: { readonly nylon: number; readonly linked: number } | null;
}

/** `nylon` are THHN, THWN and THWN-2, `linked` XHHW and XHHW-2; copper stranded, aluminum compact. */
export const CONDUCTOR_WEIGHTS: CodeTable<ConductorWeightRow> = {
  source:
    'Copper THHN and THWN-2 to 250 kcmil and aluminum XHHW-2 to 3/0: weights in data sheets of building wire; the others worked out from the areas of Chapter 9 and the densities of the metals and coverings',
  verified:
    'The same working gives the printed copper weights within 2.4 percent from 8 AWG to 250 kcmil, and the printed aluminum weights within 3.9 percent. Every column rises from size to size.',
  doubts: [
    'XHHW-2 in copper was worked out alone: expect 4 percent, and 10 for 14 to 8 AWG.',
    'THHN in aluminum was worked out alone, and not every size is made.',
  ],
  rows: [
    { size: '14', copper: { nylon: 16, linked: 18, bare: 12.7 }, aluminum: null },
    { size: '12', copper: { nylon: 24, linked: 26, bare: 20.2 }, aluminum: null },
    { size: '10', copper: { nylon: 38, linked: 39, bare: 32 }, aluminum: null },
    { size: '8', copper: { nylon: 64, linked: 65, bare: 50.9 }, aluminum: { nylon: 27, linked: 30 } },
    { size: '6', copper: { nylon: 98, linked: 97, bare: 81 }, aluminum: { nylon: 38, linked: 42 } },
    { size: '4', copper: { nylon: 155, linked: 149, bare: 128.8 }, aluminum: { nylon: 62, linked: 58 } },
    { size: '3', copper: { nylon: 190, linked: 184, bare: 162.4 }, aluminum: null },
    { size: '2', copper: { nylon: 236, linked: 229, bare: 204.8 }, aluminum: { nylon: 90, linked: 86 } },
    { size: '1', copper: { nylon: 300, linked: 292, bare: 258.3 }, aluminum: { nylon: 117, linked: 109 } },
    { size: '1/0', copper: { nylon: 372, linked: 363, bare: 325.9 }, aluminum: { nylon: 142, linked: 133 } },
    { size: '2/0', copper: { nylon: 462, linked: 452, bare: 410.7 }, aluminum: { nylon: 172, linked: 162 } },
    { size: '3/0', copper: { nylon: 575, linked: 564, bare: 517.8 }, aluminum: { nylon: 209, linked: 200 } },
    { size: '4/0', copper: { nylon: 716, linked: 704, bare: 653 }, aluminum: { nylon: 256, linked: 245 } },
    { size: '250', copper: { nylon: 846, linked: 838, bare: 771.5 }, aluminum: { nylon: 311, linked: 295 } },
    { size: '300', copper: { nylon: 1016, linked: 998, bare: 925.8 }, aluminum: { nylon: 364, linked: 347 } },
    { size: '350', copper: { nylon: 1177, linked: 1157, bare: 1080.1 }, aluminum: { nylon: 417, linked: 399 } },
    { size: '400', copper: { nylon: 1338, linked: 1316, bare: 1234.3 }, aluminum: { nylon: 469, linked: 450 } },
    { size: '500', copper: { nylon: 1657, linked: 1634, bare: 1542.9 }, aluminum: { nylon: 573, linked: 552 } },
    { size: '600', copper: { nylon: 1998, linked: 1976, bare: 1851.5 }, aluminum: { nylon: 697, linked: 676 } },
    { size: '700', copper: { nylon: 2317, linked: 2293, bare: 2160.1 }, aluminum: { nylon: 800, linked: 778 } },
    { size: '750', copper: { nylon: 2477, linked: 2452, bare: 2314.4 }, aluminum: { nylon: 852, linked: 829 } },
    { size: '800', copper: { nylon: 2636, linked: 2610, bare: 2468.7 }, aluminum: null },
    { size: '900', copper: { nylon: 2954, linked: 2927, bare: 2777.3 }, aluminum: null },
    { size: '1000', copper: { nylon: 3271, linked: 3243, bare: 3085.9 }, aluminum: { nylon: 1109, linked: 1083 } },
  ],
};
