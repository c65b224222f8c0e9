import type { Feeder, Site } from '../../routing/site/site.ts';
import type { Plan } from '../plan/plan-shape.ts';
import { dealtLine } from './at-full-rate.ts';

/**
 * What the supply of a way carries with all chargers on: its boards under a shared limit, the feeders that stand, as drawn,
 * and its transformers. So an estimator sees what each leaves, without a calculation of his own.
 * @param continuous what continuous amperes count for at a breaker
 */
export function loadingWords(site: Site, { supply }: Plan, continuous: number): readonly string[] {
  const limits = site.equipment.flatMap(({ id, managedAmps, phases = 3 }) => {
    const own = site.chargers.filter(({ from }) => from === id);
    if (managedAmps === undefined || own.length === 0) return [];
    const line = dealtLine(own, phases);
    if (line <= managedAmps) return [];
    return [
      `All ${own.length} chargers of ${id} at full rate would draw ${Math.round(line)} A on its busiest line${evenly(own, phases)}; its limit is ${managedAmps} A.`,
    ];
  });
  const feeders = site.feeders.flatMap((feeder) => {
    const fact = supply.feeders.find(({ id }) => id === feeder.id);
    if (feeder.existing !== true || fact === undefined) return [];
    const { A, B, C } = fact.amps;
    const most = Math.max(A, B, C);
    return most > 0 ? [carries(feeder, most, continuous)] : [];
  });
  const transformers = supply.transformers.flatMap(({ id, kva, loadKva, percentLoaded }) =>
    kva > 0
      ? [`${id} is loaded to ${Math.round(percentLoaded)}%: ${loadKva.toFixed(1)} of ${kva} kVA, all chargers on.`]
      : [],
  );
  return [...limits, ...feeders, ...transformers];
}

const carries = ({ id, breakerAmps }: Feeder, most: number, continuous: number): string =>
  `${id} carries ${Math.round(most)} A on its busiest line, all chargers on, of the ${Math.floor(breakerAmps / continuous + 1e-9)} A that its breaker of ${breakerAmps} A takes continuously.`;

/** What a line would carry were single-phase chargers dealt to three pairs without a rest, where that differs. */
function evenly(chargers: Site['chargers'], phases: 1 | 3): string {
  const single = chargers.filter((one) => one.phases !== 3);
  if (phases === 1 || single.length !== chargers.length || single.length % 3 === 0) return '';
  const amps = (single.reduce((sum, one) => sum + one.amps, 0) / 3) * Math.sqrt(3);
  return ` (${Math.round(amps)} A were they dealt evenly)`;
}
