import type { ImpedanceRow } from '../conductor-rows.ts';
import type { CodeTable } from '../table.ts';

/** Ac resistance and reactance, 600 V, three single conductors in a raceway. */
export const IMPEDANCES: CodeTable<ImpedanceRow> = {
  source: 'NEC 2023 Chapter 9 Table 9',
  verified:
    'Reactance and resistance agree with three independent copies (one of all sizes); effective impedances at 0.85 power factor agree where a copy was seen. Every one is R cos + X sin within its rounding.',
  doubts: [
    '1/0 copper in aluminum conduit is 0.13; one copy shows 0.12, judged a slip there.',
    'Effective impedances of 2/0 and larger in PVC and steel and of aluminum are from memory and that check; the calculations do not use them.',
  ],
  rows: [
    {
      size: '14',
      x: { PVC: 0.058, aluminum: 0.058, steel: 0.073 },
      copper: { PVC: 3.1, aluminum: 3.1, steel: 3.1 },
      aluminum: null,
      z85: { copper: { PVC: 2.7, aluminum: 2.7, steel: 2.7 }, aluminum: null },
    },
    {
      size: '12',
      x: { PVC: 0.054, aluminum: 0.054, steel: 0.068 },
      copper: { PVC: 2, aluminum: 2, steel: 2 },
      aluminum: { PVC: 3.2, aluminum: 3.2, steel: 3.2 },
      z85: { copper: { PVC: 1.7, aluminum: 1.7, steel: 1.7 }, aluminum: { PVC: 2.8, aluminum: 2.8, steel: 2.8 } },
    },
    {
      size: '10',
      x: { PVC: 0.05, aluminum: 0.05, steel: 0.063 },
      copper: { PVC: 1.2, aluminum: 1.2, steel: 1.2 },
      aluminum: { PVC: 2, aluminum: 2, steel: 2 },
      z85: { copper: { PVC: 1.1, aluminum: 1.1, steel: 1.1 }, aluminum: { PVC: 1.8, aluminum: 1.8, steel: 1.8 } },
    },
    {
      size: '8',
      x: { PVC: 0.052, aluminum: 0.052, steel: 0.065 },
      copper: { PVC: 0.78, aluminum: 0.78, steel: 0.78 },
      aluminum: { PVC: 1.3, aluminum: 1.3, steel: 1.3 },
      z85: { copper: { PVC: 0.69, aluminum: 0.69, steel: 0.7 }, aluminum: { PVC: 1.1, aluminum: 1.1, steel: 1.1 } },
    },
    {
      size: '6',
      x: { PVC: 0.051, aluminum: 0.051, steel: 0.064 },
      copper: { PVC: 0.49, aluminum: 0.49, steel: 0.49 },
      aluminum: { PVC: 0.81, aluminum: 0.81, steel: 0.81 },
      z85: { copper: { PVC: 0.44, aluminum: 0.45, steel: 0.45 }, aluminum: { PVC: 0.71, aluminum: 0.72, steel: 0.72 } },
    },
    {
      size: '4',
      x: { PVC: 0.048, aluminum: 0.048, steel: 0.06 },
      copper: { PVC: 0.31, aluminum: 0.31, steel: 0.31 },
      aluminum: { PVC: 0.51, aluminum: 0.51, steel: 0.51 },
      z85: { copper: { PVC: 0.29, aluminum: 0.29, steel: 0.3 }, aluminum: { PVC: 0.46, aluminum: 0.46, steel: 0.46 } },
    },
    {
      size: '3',
      x: { PVC: 0.047, aluminum: 0.047, steel: 0.059 },
      copper: { PVC: 0.25, aluminum: 0.25, steel: 0.25 },
      aluminum: { PVC: 0.4, aluminum: 0.41, steel: 0.4 },
      z85: { copper: { PVC: 0.23, aluminum: 0.24, steel: 0.24 }, aluminum: { PVC: 0.37, aluminum: 0.37, steel: 0.37 } },
    },
    {
      size: '2',
      x: { PVC: 0.045, aluminum: 0.045, steel: 0.057 },
      copper: { PVC: 0.19, aluminum: 0.2, steel: 0.2 },
      aluminum: { PVC: 0.32, aluminum: 0.32, steel: 0.32 },
      z85: { copper: { PVC: 0.19, aluminum: 0.19, steel: 0.2 }, aluminum: { PVC: 0.3, aluminum: 0.3, steel: 0.3 } },
    },
    {
      size: '1',
      x: { PVC: 0.046, aluminum: 0.046, steel: 0.057 },
      copper: { PVC: 0.15, aluminum: 0.16, steel: 0.16 },
      aluminum: { PVC: 0.25, aluminum: 0.26, steel: 0.25 },
      z85: { copper: { PVC: 0.16, aluminum: 0.16, steel: 0.16 }, aluminum: { PVC: 0.24, aluminum: 0.24, steel: 0.25 } },
    },
    {
      size: '1/0',
      x: { PVC: 0.044, aluminum: 0.044, steel: 0.055 },
      copper: { PVC: 0.12, aluminum: 0.13, steel: 0.12 },
      aluminum: { PVC: 0.2, aluminum: 0.21, steel: 0.2 },
      z85: { copper: { PVC: 0.13, aluminum: 0.13, steel: 0.13 }, aluminum: { PVC: 0.19, aluminum: 0.2, steel: 0.2 } },
    },
    {
      size: '2/0',
      x: { PVC: 0.043, aluminum: 0.043, steel: 0.054 },
      copper: { PVC: 0.1, aluminum: 0.1, steel: 0.1 },
      aluminum: { PVC: 0.16, aluminum: 0.16, steel: 0.16 },
      z85: { copper: { PVC: 0.11, aluminum: 0.11, steel: 0.11 }, aluminum: { PVC: 0.16, aluminum: 0.16, steel: 0.16 } },
    },
    {
      size: '3/0',
      x: { PVC: 0.042, aluminum: 0.042, steel: 0.052 },
      copper: { PVC: 0.077, aluminum: 0.082, steel: 0.079 },
      aluminum: { PVC: 0.13, aluminum: 0.13, steel: 0.13 },
      z85: {
        copper: { PVC: 0.088, aluminum: 0.092, steel: 0.094 },
        aluminum: { PVC: 0.13, aluminum: 0.13, steel: 0.14 },
      },
    },
    {
      size: '4/0',
      x: { PVC: 0.041, aluminum: 0.041, steel: 0.051 },
      copper: { PVC: 0.062, aluminum: 0.067, steel: 0.063 },
      aluminum: { PVC: 0.1, aluminum: 0.11, steel: 0.1 },
      z85: {
        copper: { PVC: 0.074, aluminum: 0.078, steel: 0.08 },
        aluminum: { PVC: 0.11, aluminum: 0.11, steel: 0.11 },
      },
    },
    {
      size: '250',
      x: { PVC: 0.041, aluminum: 0.041, steel: 0.052 },
      copper: { PVC: 0.052, aluminum: 0.057, steel: 0.054 },
      aluminum: { PVC: 0.085, aluminum: 0.09, steel: 0.086 },
      z85: {
        copper: { PVC: 0.066, aluminum: 0.07, steel: 0.073 },
        aluminum: { PVC: 0.094, aluminum: 0.098, steel: 0.1 },
      },
    },
    {
      size: '300',
      x: { PVC: 0.041, aluminum: 0.041, steel: 0.051 },
      copper: { PVC: 0.044, aluminum: 0.049, steel: 0.045 },
      aluminum: { PVC: 0.071, aluminum: 0.076, steel: 0.072 },
      z85: {
        copper: { PVC: 0.059, aluminum: 0.063, steel: 0.065 },
        aluminum: { PVC: 0.082, aluminum: 0.086, steel: 0.088 },
      },
    },
    {
      size: '350',
      x: { PVC: 0.04, aluminum: 0.04, steel: 0.05 },
      copper: { PVC: 0.038, aluminum: 0.043, steel: 0.039 },
      aluminum: { PVC: 0.061, aluminum: 0.066, steel: 0.063 },
      z85: {
        copper: { PVC: 0.053, aluminum: 0.058, steel: 0.06 },
        aluminum: { PVC: 0.073, aluminum: 0.077, steel: 0.08 },
      },
    },
    {
      size: '400',
      x: { PVC: 0.04, aluminum: 0.04, steel: 0.049 },
      copper: { PVC: 0.033, aluminum: 0.038, steel: 0.035 },
      aluminum: { PVC: 0.054, aluminum: 0.059, steel: 0.055 },
      z85: {
        copper: { PVC: 0.049, aluminum: 0.053, steel: 0.056 },
        aluminum: { PVC: 0.066, aluminum: 0.071, steel: 0.073 },
      },
    },
    {
      size: '500',
      x: { PVC: 0.039, aluminum: 0.039, steel: 0.048 },
      copper: { PVC: 0.027, aluminum: 0.032, steel: 0.029 },
      aluminum: { PVC: 0.043, aluminum: 0.048, steel: 0.045 },
      z85: {
        copper: { PVC: 0.043, aluminum: 0.048, steel: 0.05 },
        aluminum: { PVC: 0.057, aluminum: 0.061, steel: 0.064 },
      },
    },
    {
      size: '600',
      x: { PVC: 0.039, aluminum: 0.039, steel: 0.048 },
      copper: { PVC: 0.023, aluminum: 0.028, steel: 0.025 },
      aluminum: { PVC: 0.036, aluminum: 0.041, steel: 0.038 },
      z85: {
        copper: { PVC: 0.04, aluminum: 0.044, steel: 0.047 },
        aluminum: { PVC: 0.051, aluminum: 0.055, steel: 0.058 },
      },
    },
    {
      size: '750',
      x: { PVC: 0.038, aluminum: 0.038, steel: 0.048 },
      copper: { PVC: 0.019, aluminum: 0.024, steel: 0.021 },
      aluminum: { PVC: 0.029, aluminum: 0.034, steel: 0.031 },
      z85: {
        copper: { PVC: 0.036, aluminum: 0.04, steel: 0.043 },
        aluminum: { PVC: 0.045, aluminum: 0.049, steel: 0.052 },
      },
    },
    {
      size: '1000',
      x: { PVC: 0.037, aluminum: 0.037, steel: 0.046 },
      copper: { PVC: 0.015, aluminum: 0.019, steel: 0.018 },
      aluminum: { PVC: 0.023, aluminum: 0.027, steel: 0.025 },
      z85: {
        copper: { PVC: 0.032, aluminum: 0.036, steel: 0.04 },
        aluminum: { PVC: 0.039, aluminum: 0.042, steel: 0.046 },
      },
    },
  ],
};
