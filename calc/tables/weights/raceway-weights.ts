import type { Method } from '../../../routing/site/schema/vocabulary.ts';
import type { CodeTable } from '../table.ts';

/** A raceway of one trade size: outside diameter, inches; pounds a foot empty, and with as much copper as 40% fill takes. */
export interface RacewayWeightRow {
  readonly method: Method;
  readonly tradeSize: string;
  readonly outside: number;
  readonly pounds: number;
  /** Raceway and the heaviest set of three or more copper conductors of one size in it. */
  readonly filled: number;
}

export const RACEWAY_WEIGHTS: CodeTable<RacewayWeightRow> = {
  source:
    'EMT: nominal weight, ANSI C80.3, by a table of the steel tube trade; RMC and IMC: nominal weight with a coupling every 10 ft, ANSI C80.1 and C80.6, from memory; PVC: nominal weight of pipe of the same schedule; LFMC: from memory',
  verified:
    'Steel: each equals the steel between its diameters at 0.2836 lb a cubic inch within 3 percent, and RMC and IMC lie 2 to 9 percent over the least weights of UL 6 and UL 1242, which two printed tables give alike. PVC: each equals its wall at a specific gravity of 1.40. Filled: Chapter 9 areas and the weights of THWN-2, worked out.',
  doubts: [
    'EMT is without its couplings: see the allowance for fittings.',
    'PVC conduit compound may be of a specific gravity of 1.35 to 1.45.',
    'IMC of 4 in, and all LFMC, were not checked against anything.',
  ],
  rows: [
    { method: 'EMT', tradeSize: '1/2', outside: 0.706, pounds: 0.3, filled: 0.52 },
    { method: 'EMT', tradeSize: '3/4', outside: 0.922, pounds: 0.46, filled: 0.85 },
    { method: 'EMT', tradeSize: '1', outside: 1.163, pounds: 0.67, filled: 1.29 },
    { method: 'EMT', tradeSize: '1-1/4', outside: 1.51, pounds: 1.01, filled: 2.19 },
    { method: 'EMT', tradeSize: '1-1/2', outside: 1.74, pounds: 1.16, filled: 2.88 },
    { method: 'EMT', tradeSize: '2', outside: 2.197, pounds: 1.48, filled: 4.36 },
    { method: 'EMT', tradeSize: '2-1/2', outside: 2.875, pounds: 2.16, filled: 7.24 },
    { method: 'EMT', tradeSize: '3', outside: 3.5, pounds: 2.63, filled: 10.91 },
    { method: 'EMT', tradeSize: '3-1/2', outside: 4, pounds: 3.49, filled: 14.03 },
    { method: 'EMT', tradeSize: '4', outside: 4.5, pounds: 3.93, filled: 17.31 },
    { method: 'RMC', tradeSize: '1/2', outside: 0.84, pounds: 0.82, filled: 1.04 },
    { method: 'RMC', tradeSize: '3/4', outside: 1.05, pounds: 1.09, filled: 1.48 },
    { method: 'RMC', tradeSize: '1', outside: 1.315, pounds: 1.61, filled: 2.32 },
    { method: 'RMC', tradeSize: '1-1/4', outside: 1.66, pounds: 2.18, filled: 3.36 },
    { method: 'RMC', tradeSize: '1-1/2', outside: 1.9, pounds: 2.63, filled: 4.35 },
    { method: 'RMC', tradeSize: '2', outside: 2.375, pounds: 3.5, filled: 6.38 },
    { method: 'RMC', tradeSize: '2-1/2', outside: 2.875, pounds: 5.59, filled: 9.89 },
    { method: 'RMC', tradeSize: '3', outside: 3.5, pounds: 7.27, filled: 14.22 },
    { method: 'RMC', tradeSize: '3-1/2', outside: 4, pounds: 8.8, filled: 18.07 },
    { method: 'RMC', tradeSize: '4', outside: 4.5, pounds: 10.3, filled: 22.12 },
    { method: 'RMC', tradeSize: '5', outside: 5.563, pounds: 14.0, filled: 32.54 },
    { method: 'RMC', tradeSize: '6', outside: 6.625, pounds: 18.4, filled: 45.65 },
    { method: 'IMC', tradeSize: '1/2', outside: 0.815, pounds: 0.62, filled: 0.86 },
    { method: 'IMC', tradeSize: '3/4', outside: 1.029, pounds: 0.84, filled: 1.26 },
    { method: 'IMC', tradeSize: '1', outside: 1.29, pounds: 1.19, filled: 1.9 },
    { method: 'IMC', tradeSize: '1-1/4', outside: 1.638, pounds: 1.58, filled: 2.78 },
    { method: 'IMC', tradeSize: '1-1/2', outside: 1.883, pounds: 1.94, filled: 3.79 },
    { method: 'IMC', tradeSize: '2', outside: 2.36, pounds: 2.56, filled: 5.61 },
    { method: 'IMC', tradeSize: '2-1/2', outside: 2.857, pounds: 4.41, filled: 8.71 },
    { method: 'IMC', tradeSize: '3', outside: 3.476, pounds: 5.43, filled: 12.86 },
    { method: 'IMC', tradeSize: '3-1/2', outside: 3.971, pounds: 6.29, filled: 16.2 },
    { method: 'IMC', tradeSize: '4', outside: 4.466, pounds: 7.0, filled: 20.08 },
    { method: 'PVC40', tradeSize: '1/2', outside: 0.84, pounds: 0.161, filled: 0.35 },
    { method: 'PVC40', tradeSize: '3/4', outside: 1.05, pounds: 0.214, filled: 0.61 },
    { method: 'PVC40', tradeSize: '1', outside: 1.315, pounds: 0.315, filled: 0.94 },
    { method: 'PVC40', tradeSize: '1-1/4', outside: 1.66, pounds: 0.426, filled: 1.61 },
    { method: 'PVC40', tradeSize: '1-1/2', outside: 1.9, pounds: 0.509, filled: 2.03 },
    { method: 'PVC40', tradeSize: '2', outside: 2.375, pounds: 0.682, filled: 3.55 },
    { method: 'PVC40', tradeSize: '2-1/2', outside: 2.875, pounds: 1.076, filled: 5.14 },
    { method: 'PVC40', tradeSize: '3', outside: 3.5, pounds: 1.409, filled: 8.04 },
    { method: 'PVC40', tradeSize: '3-1/2', outside: 4, pounds: 1.697, filled: 10.56 },
    { method: 'PVC40', tradeSize: '4', outside: 4.5, pounds: 2.006, filled: 13.82 },
    { method: 'PVC40', tradeSize: '5', outside: 5.563, pounds: 2.726, filled: 21.18 },
    { method: 'PVC40', tradeSize: '6', outside: 6.625, pounds: 3.535, filled: 30.12 },
    { method: 'PVC80', tradeSize: '1/2', outside: 0.84, pounds: 0.202, filled: 0.35 },
    { method: 'PVC80', tradeSize: '3/4', outside: 1.05, pounds: 0.273, filled: 0.57 },
    { method: 'PVC80', tradeSize: '1', outside: 1.315, pounds: 0.402, filled: 0.9 },
    { method: 'PVC80', tradeSize: '1-1/4', outside: 1.66, pounds: 0.554, filled: 1.5 },
    { method: 'PVC80', tradeSize: '1-1/2', outside: 1.9, pounds: 0.673, filled: 2.06 },
    { method: 'PVC80', tradeSize: '2', outside: 2.375, pounds: 0.932, filled: 3.24 },
    { method: 'PVC80', tradeSize: '2-1/2', outside: 2.875, pounds: 1.419, filled: 5.0 },
    { method: 'PVC80', tradeSize: '3', outside: 3.5, pounds: 1.903, filled: 7.26 },
    { method: 'PVC80', tradeSize: '3-1/2', outside: 4, pounds: 2.322, filled: 10.31 },
    { method: 'PVC80', tradeSize: '4', outside: 4.5, pounds: 2.782, filled: 13.33 },
    { method: 'PVC80', tradeSize: '5', outside: 5.563, pounds: 3.867, filled: 20.44 },
    { method: 'PVC80', tradeSize: '6', outside: 6.625, pounds: 5.313, filled: 29.04 },
    { method: 'LFMC', tradeSize: '3/8', outside: 0.71, pounds: 0.25, filled: 0.37 },
    { method: 'LFMC', tradeSize: '1/2', outside: 0.84, pounds: 0.3, filled: 0.52 },
    { method: 'LFMC', tradeSize: '3/4', outside: 1.05, pounds: 0.42, filled: 0.81 },
    { method: 'LFMC', tradeSize: '1', outside: 1.315, pounds: 0.7, filled: 1.32 },
    { method: 'LFMC', tradeSize: '1-1/4', outside: 1.66, pounds: 0.9, filled: 2.08 },
    { method: 'LFMC', tradeSize: '1-1/2', outside: 1.9, pounds: 1.15, filled: 2.87 },
    { method: 'LFMC', tradeSize: '2', outside: 2.375, pounds: 1.55, filled: 4.43 },
    { method: 'LFMC', tradeSize: '2-1/2', outside: 2.875, pounds: 2.1, filled: 7.18 },
    { method: 'LFMC', tradeSize: '3', outside: 3.5, pounds: 2.7, filled: 10.99 },
    { method: 'LFMC', tradeSize: '3-1/2', outside: 4.0, pounds: 3.3, filled: 13.84 },
    { method: 'LFMC', tradeSize: '4', outside: 4.5, pounds: 3.9, filled: 17.28 },
  ],
};
