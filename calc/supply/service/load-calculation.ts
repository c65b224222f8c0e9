import { counted } from '../../../routing/words/counted.ts';
import { continuousPercent } from '../../circuits/design-amps.ts';
import type { ChargerLoad, LineTriple, LoadCalculation, LoadCase } from '../../plan-file/loads.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { cited } from '../../tables/sections.ts';
import { SILENT, type Tell } from '../../words/explain.ts';
import { measured } from '../../words/measured.ts';
import { TRANSFORMER_SIZES_SOURCE, utilityTransformer } from './transformer-sizes.ts';

/** Line currents of a load: continuous load counted once, and as devices and conductors are chosen for. */
export interface CountedLines {
  /** Of `once`, kilovolt-amperes. */
  readonly kva: number;
  readonly once: LineTriple;
  readonly design: LineTriple;
}

/** A service before it is counted. Amperes and volts at `at`. */
export interface ServiceLoad
  extends Omit<LoadCalculation, 'ratingAmps' | 'cases' | 'decides' | 'designAmps' | 'spareAmps' | 'transformerKva'> {
  readonly connected: Omit<CountedLines, 'design'>;
  /** Chargers at their rating, and none for less than the code's least, each as energy management leaves it. */
  readonly nameplate: CountedLines;
  readonly unit: CountedLines;
}

const greatest = (lines: LineTriple): number => Math.max(...lines);
const plus = (lines: LineTriple, amps: number, phases: 1 | 3): LineTriple =>
  // A single-phase service has two lines; the one that is not there stays at nothing.
  lines.map((line) => (phases === 3 || line > 0 ? line + amps : line)) as unknown as LineTriple;

/**
 * Rated and least volt-amperes of chargers of one rating.
 * @param unitLoadVa the code's least load of one charger, VA
 */
export function chargerLoad(of: Omit<ChargerLoad, 'nameplateVa' | 'unitVa'>, unitLoadVa: number): ChargerLoad {
  const va = of.amps * of.volts * (of.phases === 3 ? Math.sqrt(3) : 1);
  return { ...of, nameplateVa: of.count * va, unitVa: of.count * Math.max(va, unitLoadVa) };
}

/** Kilovolt-amperes of the same amperes in each line. */
export const evenKva = (amps: number, volts: number, phases: 1 | 3): number =>
  (amps * volts * (phases === 3 ? Math.sqrt(3) : 1)) / 1000;

/** The same calculation with its result: which way of counting decides, whether it fits, and the transformer for it. */
export function loadCalculation(tables: CodeTables, of: ServiceLoad, tell: Tell = SILENT): LoadCalculation {
  const { connected, nameplate, unit, ...service } = of;
  const { volts, phases, existingAmps } = of;
  const ratings = of.service.map(({ ratingAmps }) => ratingAmps);
  const ratingAmps =
    ratings.length === 0 || ratings.includes(null) ? null : ratings.reduce<number>((sum, one) => sum + one!, 0);
  const fitting = (design: LineTriple): boolean | null =>
    ratingAmps === null ? null : greatest(design) <= ratingAmps * (1 + 1e-9);
  const counted = (method: LoadCase['method'], { kva, once, design }: CountedLines): LoadCase => ({
    method,
    kva,
    amps: once,
    designAmps: design,
    fits: fitting(design),
  });
  const both = [counted('nameplate', nameplate), counted('unit', unit)];
  const larger = greatest(both[1]!.designAmps) >= greatest(both[0]!.designAmps) ? both[1]! : both[0]!;
  const { factor } = tables.existingDemand;
  const withExisting: readonly LoadCase[] =
    existingAmps === null
      ? []
      : [
          counted('measured', {
            kva: larger.kva + evenKva(existingAmps, volts, phases),
            once: plus(larger.amps, existingAmps, phases),
            design: plus(larger.designAmps, factor * existingAmps, phases),
          }),
        ];
  const deciding = withExisting[0] ?? larger;
  const designAmps = greatest(deciding.designAmps);
  const result: LoadCalculation = {
    ...service,
    ratingAmps,
    cases: [
      { ...counted('connected', { ...connected, design: connected.once }), fits: null },
      ...both,
      ...withExisting,
    ],
    decides: deciding.method,
    designAmps,
    spareAmps: ratingAmps === null ? null : ratingAmps - designAmps,
    transformerKva: utilityTransformer(deciding.kva, phases),
  };
  tellAll(tables, result, larger, deciding, tell);
  return result;
}

function tellAll(tables: CodeTables, result: LoadCalculation, larger: LoadCase, deciding: LoadCase, tell: Tell): void {
  const { chargers, managed, loads, phases, volts, existingAmps, ratingAmps } = result;
  const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
  const { unitLoadVa } = tables.vehicleSupply;
  for (const { count, amps, volts: at, phases: lines, nameplateVa, unitVa } of chargers)
    tell(() => ({
      find: `load of ${counted(count, 'charger', 'chargers')} of ${amps} A`,
      formula: `each the larger of ${unitLoadVa} VA and its rating, ${lines === 3 ? 'sqrt 3 x volts x amperes' : 'volts x amperes'}`,
      values: { rating: measured(nameplateVa / count, 'VA each'), volts: measured(at, 'V'), number: count },
      result: unitVa,
      unit: 'VA',
      source: cited(tables, 'chargerLoad'),
    }));
  for (const { equipment, amps, ceilingVa, unitVa } of managed)
    tell(() => ({
      find: `load of the chargers under ${equipment}`,
      formula: 'the less of what they ask for and what an energy management system there lets them have',
      values: {
        asked: measured(unitVa, 'VA'),
        ceiling: measured(amps, 'A'),
        'ceiling in VA': measured(ceilingVa, 'VA'),
      },
      result: Math.min(unitVa, ceilingVa),
      unit: 'VA',
      source: `${cited(tables, 'managedLoad', 'energyManagement')}; ceiling as entered`,
    }));
  tell(() => ({
    find: 'other loads',
    formula: 'volt-amperes as entered times their demand factors; continuous ones and motors counted once here',
    values: { number: loads.length },
    result: sum(loads.map(({ va, demand }) => va * (demand ?? 1))),
    unit: 'VA',
    source: 'ratings as entered',
  }));
  const [a, b, c] = larger.amps;
  tell(() => ({
    find: 'calculated load',
    formula: `${larger.method === 'unit' ? 'chargers by the larger of rating and least load' : 'chargers at their rating'}, under their ceilings, and other loads: volt-amperes of each line`,
    values: { A: measured(a, 'A'), B: measured(b, 'A'), C: measured(c, 'A'), volts: measured(volts, 'V') },
    result: larger.kva,
    unit: 'kVA',
    source: cited(tables, 'chargerLoad', 'loadManagement'),
  }));
  tell(() => ({
    find: 'amperes to be designed for',
    formula: `greatest line, chargers, ceilings and other continuous load counted ${continuousPercent(tables)}`,
    values: {
      A: measured(larger.designAmps[0], 'A'),
      B: measured(larger.designAmps[1], 'A'),
      C: measured(larger.designAmps[2], 'A'),
    },
    result: greatest(larger.designAmps),
    unit: 'A',
    source: cited(tables, 'chargerDevice', 'feederDevice'),
  }));
  if (existingAmps !== null)
    tell(() => ({
      find: 'with what stands already',
      formula: `measured demand x ${tables.existingDemand.factor} + the new load`,
      values: {
        'measured demand': measured(existingAmps, 'A'),
        'new load': measured(greatest(larger.designAmps), 'A'),
      },
      result: greatest(deciding.designAmps),
      unit: 'A',
      source: tables.existingDemand.source,
    }));
  if (ratingAmps !== null)
    tell(() => ({
      find: 'rest of the rating of the service',
      formula: 'rating - amperes to be designed for',
      values: { rating: measured(ratingAmps, 'A'), asked: measured(result.designAmps, 'A') },
      result: result.spareAmps!,
      unit: 'A',
      source: 'ratings as entered',
    }));
  for (const { of, charger, board, va, sourcePercent, boardPercent } of result.steps)
    tell(() => ({
      find: of === 'one' ? `fall of volts at the start of ${charger}` : 'fall of volts when everything starts at once',
      formula:
        of === 'one'
          ? 'volt-amperes x (R cos + X sin) of the way from the source / volts squared, twice that across two lines'
          : 'the same at the source, and behind it what the solution with everything on has below nominal',
      values: {
        'volt-amperes': measured(va, 'VA'),
        'at the source': sourcePercent === null ? 'no figure of the source' : measured(sourcePercent, '%'),
        board,
      },
      result: boardPercent === null ? 'not known' : boardPercent,
      ...(boardPercent === null ? {} : { unit: '%' }),
      source: 'standard theory; no limit is held against it',
    }));
  tell(() => ({
    find: 'transformer to ask the utility for',
    formula: `smallest usual ${phases === 3 ? 'three' : 'single'}-phase size of at least the load, continuous load and measured demand counted once`,
    values: { load: measured(deciding.kva, 'kVA') },
    result: result.transformerKva === null ? 'past the usual sizes' : result.transformerKva,
    unit: 'kVA',
    source: TRANSFORMER_SIZES_SOURCE,
  }));
}
