import type { CodeTables } from '../code-tables.ts';
import type { ConductorRow } from '../conductor-rows.ts';

type Figures = readonly [
  size: string,
  circularMils: number,
  strands: number,
  strandDiameter: number | null,
  diameter: number,
  area: number,
  copper: number,
  coatedCopper: number,
  aluminum: number,
];

const row = ([
  size,
  circularMils,
  strands,
  strandDiameter,
  diameter,
  area,
  copper,
  coatedCopper,
  aluminum,
]: Figures): ConductorRow => ({
  size,
  circularMils,
  strands,
  strandDiameter,
  diameter,
  area,
  copper,
  coatedCopper,
  aluminum,
});

const FIGURES: readonly Figures[] = [
  ['18', 1620, 1, null, 0.04, 0.001, 7.77, 8.08, 12.8],
  ['18', 1620, 7, 0.015, 0.046, 0.002, 7.95, 8.45, 13.1],
  ['16', 2580, 1, null, 0.051, 0.002, 4.89, 5.08, 8.05],
  ['16', 2580, 7, 0.019, 0.058, 0.003, 4.99, 5.29, 8.21],
  ['14', 4110, 1, null, 0.064, 0.003, 3.07, 3.19, 5.06],
  ['14', 4110, 7, 0.024, 0.073, 0.004, 3.14, 3.26, 5.17],
  ['12', 6530, 1, null, 0.081, 0.005, 1.93, 2.01, 3.18],
  ['12', 6530, 7, 0.03, 0.092, 0.006, 1.98, 2.05, 3.25],
  ['10', 10380, 1, null, 0.102, 0.008, 1.21, 1.26, 2],
  ['10', 10380, 7, 0.038, 0.116, 0.011, 1.24, 1.29, 2.04],
  ['8', 16510, 1, null, 0.128, 0.013, 0.764, 0.786, 1.26],
  ['8', 16510, 7, 0.049, 0.146, 0.017, 0.778, 0.809, 1.28],
  ['6', 26240, 7, 0.061, 0.184, 0.027, 0.491, 0.51, 0.808],
  ['4', 41740, 7, 0.077, 0.232, 0.042, 0.308, 0.321, 0.508],
  ['3', 52620, 7, 0.087, 0.26, 0.053, 0.245, 0.254, 0.403],
  ['2', 66360, 7, 0.097, 0.292, 0.067, 0.194, 0.201, 0.319],
  ['1', 83690, 19, 0.066, 0.332, 0.087, 0.154, 0.16, 0.253],
  ['1/0', 105600, 19, 0.074, 0.372, 0.109, 0.122, 0.127, 0.201],
  ['2/0', 133100, 19, 0.084, 0.418, 0.137, 0.0967, 0.101, 0.159],
  ['3/0', 167800, 19, 0.094, 0.47, 0.173, 0.0766, 0.0797, 0.126],
  ['4/0', 211600, 19, 0.106, 0.528, 0.219, 0.0608, 0.0626, 0.1],
  ['250', 250000, 37, 0.082, 0.575, 0.26, 0.0515, 0.0535, 0.0847],
  ['300', 300000, 37, 0.09, 0.63, 0.312, 0.0429, 0.0446, 0.0707],
  ['350', 350000, 37, 0.097, 0.681, 0.364, 0.0367, 0.0382, 0.0605],
  ['400', 400000, 37, 0.104, 0.728, 0.416, 0.0321, 0.0331, 0.0529],
  ['500', 500000, 37, 0.116, 0.813, 0.519, 0.0258, 0.0265, 0.0424],
  ['600', 600000, 61, 0.099, 0.893, 0.626, 0.0214, 0.0223, 0.0353],
  ['700', 700000, 61, 0.107, 0.964, 0.73, 0.0184, 0.0189, 0.0303],
  ['750', 750000, 61, 0.111, 0.998, 0.782, 0.0171, 0.0176, 0.0282],
  ['800', 800000, 61, 0.114, 1.03, 0.834, 0.0161, 0.0166, 0.0265],
  ['900', 900000, 61, 0.122, 1.094, 0.94, 0.0143, 0.0147, 0.0235],
  ['1000', 1000000, 61, 0.128, 1.152, 1.042, 0.0129, 0.0132, 0.0212],
];

/** Conductor properties, dc resistance at 75 °C. */
export const CONDUCTORS: CodeTables['conductors'] = {
  source: 'NEC 2023 Chapter 9 Table 8',
  verified:
    'From memory, not checked cell by cell. Derived again: 10.371 and 17.002 ohm circular mil per ft at 20 °C, carried to 75 °C with 2% for stranding, give every resistance within 1.2%; solid diameters are sqrt(circular mils)/1000 in.; area is pi/4 d². Single cells agree with pages that quote them.',
  doubts: ['Strand diameters and small areas of 18 and 16 AWG are printed to one digit only.'],
  temperatureCoefficient: { copper: 0.00323, aluminum: 0.0033 },
  rows: FIGURES.map(row),
};

/** The smallest conductors that may be used. */
export const LEAST: CodeTables['least'] = {
  source: 'NEC 2023 310.3(A), 310.10(G)',
  verified: 'From memory of the 2023 text, not checked again against it.',
  doubts: [],
  circuit: { copper: '14', aluminum: '12' },
  parallel: '1/0',
};
