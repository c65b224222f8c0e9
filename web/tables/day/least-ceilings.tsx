import { useState } from 'react';
import { dayFigures, type LeastCeiling } from '../../../calc/day/day-figures.ts';
import { STRATEGY_WORDS } from '../../../calc/day/day-words.ts';
import type { ChargingDay, Site } from '../../../routing/site/site.ts';
import { holdPanels } from '../../document/edits/hold-panels.ts';
import { useDocumentStore } from '../../document/use-document.tsx';

/** The least amperes of every managed panel with which the rule of the lot serves its cars, set with one act. */
export function LeastCeilings({ site, day }: { readonly site: Site; readonly day: ChargingDay }) {
  const document = useDocumentStore();
  const [found, setFound] = useState<{ readonly site: Site; readonly ceilings: readonly LeastCeiling[] } | null>(null);
  if (day.limits !== undefined || !site.equipment.some(({ managedAmps }) => managedAmps !== undefined)) return null;
  const figures = found?.site === site ? found : null;
  const due = figures?.ceilings.flatMap(({ limit, least }) =>
    least === null || least === 0 ? [] : [{ id: limit, amps: least }],
  );
  return (
    <section className="day-best" aria-label="Least ceilings" aria-live="polite">
      <button
        type="button"
        onClick={() => setFound({ site, ceilings: dayFigures(site).find((one) => one.day === day.id)?.ceilings ?? [] })}
      >
        Find the least ceiling of each panel under the rule
      </button>
      {figures !== null && (
        <>
          <p>
            {figures.ceilings.length === 0
              ? `${STRATEGY_WORDS.unmanaged}: no ceiling is asked of any panel.`
              : figures.ceilings
                  .map(({ limit, least }) => `${limit}: ${least === null ? 'no ceiling serves all' : `${least} A`}`)
                  .join('; ')}
          </p>
          {due !== undefined && due.length > 0 && (
            <button
              type="button"
              onClick={() => {
                const { file, apply } = document.getState();
                apply(holdPanels(file, due));
              }}
            >
              Set the managed amperes: {due.map(({ id, amps }) => `${id} ${amps} A`).join(', ')}
            </button>
          )}
        </>
      )}
    </section>
  );
}
