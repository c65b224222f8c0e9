import type { Finding } from '../../../routing/site/rules/finding.ts';
import type { ChargedCar } from '../simulated/by-rules.ts';
import type { BestOutcome } from '../simulated/charge.ts';
import type { DayFigures } from './day-figures.ts';
import { energyShortfall } from './day-figures.ts';

/** A least cost is sought among schedules that give all but this part of the most energy. */
const CLOSE = 2e-6;

interface BestOfDay {
  /** What the day is called. */
  readonly what: string;
  readonly cars: readonly ChargedCar[];
  /** Kilowatt-hours of each car under the rule of the lot. */
  readonly got: readonly number[];
  readonly best: Pick<BestOutcome, 'energy' | 'ceiling' | 'relaxed'>;
  /** The limit whose least figure was looked for, with its unit. */
  readonly limit: { readonly id: string; readonly unit: string } | null;
  readonly ceilings: DayFigures['ceilings'];
}

/**
 * What only the best schedule and the searches can tell of a day on which cars leave short: that a schedule serves all
 * where the rule does not, and the figures of the limits that would do.
 */
export function bestFindings({ what, cars, got, best, limit, ceilings }: BestOfDay): readonly Finding[] {
  const { most, carsShort } = energyShortfall(
    cars.map((car) => car.most),
    got,
  );
  if (carsShort === 0) return [];
  const found = (severity: Finding['severity'], says: string): Finding => ({
    severity,
    rule: 'charging-day',
    about: [],
    says: `${what}: ${says}`,
    source: 'best schedule by linear programs; planning figures',
  });
  const bound = best.relaxed.length > 0 ? ', as far as its bound tells' : '';
  const serves = best.energy >= (1 - CLOSE) * most;
  const under = ceilings.flatMap(({ limit: id, least }) => (least === null ? [] : [`${id} at ${least} A`]));
  const least = best.ceiling ?? null;
  const does = [
    ...(under.length > 0 ? [`under the rule ${under.join(' and ')} would do`] : []),
    ...(limit !== null && least !== null ? [`${limit.id} at ${least.toFixed(1)} ${limit.unit} at best`] : []),
  ];
  return [
    ...(serves ? [found('warn', `the rule falls short where the best schedule serves all${bound}.`)] : []),
    ...(does.length > 0 ? [found('note', `${does.join('; ')}.`)] : []),
  ];
}
