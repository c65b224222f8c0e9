import type { CodeTables } from '../code-tables.ts';
import type { ImpedanceBandRow, TransformerRow, TypicalImpedanceRow } from '../equipment-rows.ts';
import type { CodeTable } from '../table.ts';

/** Greatest overcurrent protection of transformers to 1000 V, percent of rated current. */
export const TRANSFORMER_PROTECTION: CodeTables['transformerProtection'] = {
  source: 'NEC 2023 Table 450.3(B)',
  verified: 'Agrees with a copy of the 2023 tables; 250% with a published example.',
  doubts: [
    'Transformers with their own thermal protection have a rule of their own (note 3), not here.',
    'Whether secondary devices stand grouped in one place (note 2) is not looked at: their number and the sum of their ratings are.',
  ],
  mostSecondaries: 6,
  nextRatingPercent: 125,
  rows: [
    { protection: 'primary only', primary: { from9: 125, under9: 167, under2: 300 }, secondary: null },
    {
      protection: 'primary and secondary',
      primary: { from9: 250, under9: 250, under2: 250 },
      secondary: { from9: 125, under9: 167 },
    },
  ],
};

/** Standard three-phase dry-type ratings. */
export const THREE_PHASE_TRANSFORMERS: CodeTable<TransformerRow> = {
  source: 'Standard ratings; least efficiencies from 10 CFR 431.196(a)(2), made from 2016 on',
  verified:
    'Ratings and efficiencies agree between two copies. Currents are kVA x 1000/(sqrt(3) V). Loss and resistance are derived from the efficiency alone, not published.',
  doubts: [
    'Higher efficiencies hold for units made from 23 April 2029.',
    'Half of the loss at 35% load in the windings is an assumption; the bound assumes no core loss.',
  ],
  rows: [
    {
      kva: 15,
      efficiency: 97.89,
      amps: { 208: 41.6, 240: 36.1, 480: 18 },
      lossAt35: 113,
      resistanceHalf: 3.08,
      resistanceBound: 6.16,
    },
    {
      kva: 30,
      efficiency: 98.23,
      amps: { 208: 83.3, 240: 72.2, 480: 36.1 },
      lossAt35: 189,
      resistanceHalf: 2.57,
      resistanceBound: 5.15,
    },
    {
      kva: 45,
      efficiency: 98.4,
      amps: { 208: 124.9, 240: 108.3, 480: 54.1 },
      lossAt35: 256,
      resistanceHalf: 2.32,
      resistanceBound: 4.65,
    },
    {
      kva: 75,
      efficiency: 98.6,
      amps: { 208: 208.2, 240: 180.4, 480: 90.2 },
      lossAt35: 373,
      resistanceHalf: 2.03,
      resistanceBound: 4.06,
    },
    {
      kva: 112.5,
      efficiency: 98.74,
      amps: { 208: 312.3, 240: 270.6, 480: 135.3 },
      lossAt35: 502,
      resistanceHalf: 1.82,
      resistanceBound: 3.65,
    },
    {
      kva: 150,
      efficiency: 98.83,
      amps: { 208: 416.4, 240: 360.8, 480: 180.4 },
      lossAt35: 622,
      resistanceHalf: 1.69,
      resistanceBound: 3.38,
    },
    {
      kva: 225,
      efficiency: 98.94,
      amps: { 208: 624.5, 240: 541.3, 480: 270.6 },
      lossAt35: 844,
      resistanceHalf: 1.53,
      resistanceBound: 3.06,
    },
    {
      kva: 300,
      efficiency: 99.02,
      amps: { 208: 832.7, 240: 721.7, 480: 360.8 },
      lossAt35: 1039,
      resistanceHalf: 1.41,
      resistanceBound: 2.83,
    },
    {
      kva: 500,
      efficiency: 99.14,
      amps: { 208: 1387.9, 240: 1202.8, 480: 601.4 },
      lossAt35: 1518,
      resistanceHalf: 1.24,
      resistanceBound: 2.48,
    },
    {
      kva: 750,
      efficiency: 99.23,
      amps: { 208: 2081.8, 240: 1804.2, 480: 902.1 },
      lossAt35: 2037,
      resistanceHalf: 1.11,
      resistanceBound: 2.22,
    },
    {
      kva: 1000,
      efficiency: 99.28,
      amps: { 208: 2775.7, 240: 2405.6, 480: 1202.8 },
      lossAt35: 2538,
      resistanceHalf: 1.04,
      resistanceBound: 2.07,
    },
  ],
};

/** Standard single-phase dry-type ratings. */
export const SINGLE_PHASE_TRANSFORMERS: CodeTable<TransformerRow> = {
  source: 'Standard ratings; least efficiencies from 10 CFR 431.196(a)(2)',
  verified: 'Agrees with the same two copies.',
  doubts: [],
  rows: [
    {
      kva: 15,
      efficiency: 97.7,
      amps: { 240: 62.5, 480: 31.2 },
      lossAt35: null,
      resistanceHalf: null,
      resistanceBound: null,
    },
    {
      kva: 25,
      efficiency: 98,
      amps: { 240: 104.2, 480: 52.1 },
      lossAt35: null,
      resistanceHalf: null,
      resistanceBound: null,
    },
    {
      kva: 37.5,
      efficiency: 98.2,
      amps: { 240: 156.2, 480: 78.1 },
      lossAt35: null,
      resistanceHalf: null,
      resistanceBound: null,
    },
    {
      kva: 50,
      efficiency: 98.3,
      amps: { 240: 208.3, 480: 104.2 },
      lossAt35: null,
      resistanceHalf: null,
      resistanceBound: null,
    },
    {
      kva: 75,
      efficiency: 98.5,
      amps: { 240: 312.5, 480: 156.2 },
      lossAt35: null,
      resistanceHalf: null,
      resistanceBound: null,
    },
    {
      kva: 100,
      efficiency: 98.6,
      amps: { 240: 416.7, 480: 208.3 },
      lossAt35: null,
      resistanceHalf: null,
      resistanceBound: null,
    },
    {
      kva: 167,
      efficiency: 98.7,
      amps: { 240: 695.8, 480: 347.9 },
      lossAt35: null,
      resistanceHalf: null,
      resistanceBound: null,
    },
    {
      kva: 250,
      efficiency: 98.8,
      amps: { 240: 1041.7, 480: 520.8 },
      lossAt35: null,
      resistanceHalf: null,
      resistanceBound: null,
    },
    {
      kva: 333,
      efficiency: 98.9,
      amps: { 240: 1387.5, 480: 693.8 },
      lossAt35: null,
      resistanceHalf: null,
      resistanceBound: null,
    },
  ],
};

/** Typical percent impedance of single-phase units; the nameplate rules. */
export const SINGLE_PHASE_IMPEDANCES: CodeTable<TypicalImpedanceRow> = {
  source: 'Typical data of one maker, 600 V class, ventilated, 2010',
  verified: 'Each row is Z = sqrt(R² + X²) within 0.1.',
  doubts: [
    'Units of 2010, before the present efficiency rule.',
    'The 115 °C 50 kVA row fails its own arithmetic in the copy and is left out.',
  ],
  rows: [
    { kva: 15, rise: '150C', z: 4.3, x: 3, r: 3.1, xr: 0.97 },
    { kva: 25, rise: '150C', z: 3.5, x: 2.8, r: 2.2, xr: 1.27 },
    { kva: 37.5, rise: '150C', z: 5.8, x: 4.8, r: 3.2, xr: 1.5 },
    { kva: 50, rise: '150C', z: 5.1, x: 4.3, r: 2.7, xr: 1.59 },
    { kva: 75, rise: '150C', z: 6.9, x: 6.3, r: 2.8, xr: 2.25 },
    { kva: 100, rise: '150C', z: 6.1, x: 5.6, r: 2.3, xr: 2.43 },
    { kva: 167, rise: '150C', z: 9.7, x: 9.5, r: 1.8, xr: 5.28 },
    { kva: 15, rise: '115C', z: 3.9, x: 2.6, r: 2.9, xr: 0.9 },
    { kva: 25, rise: '115C', z: 3.3, x: 2.8, r: 1.9, xr: 1.47 },
    { kva: 37.5, rise: '115C', z: 4.1, x: 2.9, r: 2.8, xr: 1.04 },
    { kva: 75, rise: '115C', z: 6.9, x: 6.3, r: 2.9, xr: 2.17 },
  ],
};

/** Plausible band of percent impedance of three-phase dry-type units; the nameplate rules. */
export const THREE_PHASE_IMPEDANCES: CodeTable<ImpedanceBandRow> = {
  source: 'From memory: typical ranges, 480 V class',
  verified:
    'Not verified: no published table was found. At mid-range the resistance that follows lies under the bound that the efficiency rule sets.',
  doubts: [
    'A band to judge an entry by, not a figure to design with.',
    'High impedance together with low X/R is not physical for units made since 2016.',
  ],
  rows: [
    { kva: 15, z: [3, 5], xr: [0.5, 1], middleR: 3.2 },
    { kva: 30, z: [3, 5.5], xr: [0.6, 1.3], middleR: 3.08 },
    { kva: 45, z: [3, 6], xr: [0.8, 1.5], middleR: 2.95 },
    { kva: 75, z: [3, 6.5], xr: [1, 2], middleR: 2.63 },
    { kva: 112.5, z: [3, 6.5], xr: [1.2, 2.2], middleR: 2.41 },
    { kva: 150, z: [3, 6.5], xr: [1.5, 2.5], middleR: 2.12 },
    { kva: 225, z: [4, 6.5], xr: [2, 3], middleR: 1.95 },
    { kva: 300, z: [4, 6.5], xr: [2, 3.5], middleR: 1.79 },
    { kva: 500, z: [4.5, 6.5], xr: [2.5, 4.5], middleR: 1.51 },
  ],
};
