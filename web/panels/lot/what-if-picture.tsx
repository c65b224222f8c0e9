import type { CostSheet } from '../../../calc/takeoff/bid/cost.ts';
import { whatIf } from '../../../calc/takeoff/bid/what-if.ts';

/** What moves the price most, as bars: copper, the labor rate, and the five lines that do it most. */
export function WhatIfPicture({
  cost,
  words,
}: {
  readonly cost: CostSheet;
  readonly words: (dollars: number) => string;
}) {
  const cases = whatIf(cost).filter(({ moves }) => moves > 0);
  const [largest] = cases;
  if (!largest) return null;
  return (
    <section aria-label="What if" className="what-if">
      <h4>What moves the price</h4>
      <ul>
        {cases.map(({ name, by, moves }) => (
          <li key={name}>
            <span>
              {name}, {Math.round(by * 100)}% more
            </span>
            <span className="figure">+{words(moves)}</span>
            <span className="bar" aria-hidden="true" style={{ width: `${(100 * moves) / largest.moves}%` }} />
          </li>
        ))}
      </ul>
    </section>
  );
}
