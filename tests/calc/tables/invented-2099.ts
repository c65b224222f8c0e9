import type { CodeTables } from '../../../calc/tables/code-tables.ts';
import { NEC_2023 } from '../../../calc/tables/nec-2023/nec-2023.ts';

/** Every text of some data with the name of the edition in the place of NEC 2023's. */
function renamed<T>(data: T): T {
  if (typeof data === 'string')
    return data.replaceAll('NEC 2023', 'Invented 2099').replaceAll(/\bNEC\b/g, 'Invented') as T;
  if (Array.isArray(data)) return data.map(renamed) as T;
  if (typeof data !== 'object' || data === null) return data;
  return Object.fromEntries(Object.entries(data).map(([name, value]) => [name, renamed(value)])) as T;
}

const AS_2023 = renamed(NEC_2023);
const but = <T, Row extends object>(table: T & { readonly rows: readonly Row[] }, change: (row: Row) => Row) => ({
  ...table,
  rows: table.rows.map(change),
});

/** An edition that there is not: as 2023 but a score of figures and six section numbers. */
export const INVENTED_2099: CodeTables = {
  ...AS_2023,
  sections: {
    ...AS_2023.sections,
    cordLength: '925.17',
    couplingHeight: '925.50',
    workingSpace: '910.26',
    parallel: '931.10',
    boxVolume: '914.16',
    feederDevice: '915.3',
  },
  continuous: { ...AS_2023.continuous, factor: 1.5 },
  least: { ...AS_2023.least, circuit: { copper: '6', aluminum: '4' }, parallel: '2/0' },
  vehicleSupply: { ...AS_2023.vehicleSupply, couplingOutdoorsIn: 30 },
  cover: but(AS_2023.cover, (row) =>
    row.place === 'traffic' ? { ...row, plasticRaceway: 36, metalRaceway: 36 } : row,
  ),
  workingSpace: {
    ...but(AS_2023.workingSpace, (row) => ({ ...row, clear: 5, grounded: 5, live: 5 })),
    widthIn: 60,
    entrances: { fromAmps: 1000, overFt: 6, widthFt: 3 },
  },
  grounding: but(AS_2023.grounding, (row) => (row.breakerAmps === 60 ? { ...row, copper: '8' } : row)),
  ambient: but(AS_2023.ambient, (row) => (row.upToC === 40 ? { ...row, factors: [0.7, 0.75, 0.8] } : row)),
  expansion: { ...AS_2023.expansion, fittingAt: 0.5 },
  nominalVolts: { ...AS_2023.nominalVolts, feeders: [240, 480, 690] },
  transformerProtection: {
    ...but(AS_2023.transformerProtection, (row) => ({
      ...row,
      primary: { ...row.primary, from9: row.secondary === null ? 200 : 250 },
      secondary: row.secondary && { from9: 150, under9: 190 },
    })),
    nextRatingPercent: 150,
  },
  motors: { ...AS_2023.motors, largestFactor: 1.4, breakerShare: 3 },
  existingDemand: { ...AS_2023.existingDemand, factor: 1.35 },
  busSources: { ...AS_2023.busSources, share: 1.3, factor: 1.45 },
  electrodeConductors: { ...AS_2023.electrodeConductors, rods: 3, ringFt: 30 },
  boxAllowances: but(AS_2023.boxAllowances, (row) => (row.size === '6' ? { ...row, volume: 9 } : row)),
};
