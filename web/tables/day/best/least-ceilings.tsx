import { useState } from 'react';
import { type DayFigures, dayFigures, type LeastCeiling } from '../../../../calc/day/figures/day-figures.ts';
import { STRATEGY_WORDS } from '../../../../calc/day/figures/day-words.ts';
import { ceilingsOfAll } from '../../../../calc/day/figures/deciding-day.ts';
import type { ChargingDay, Site } from '../../../../routing/site/site.ts';
import { counted } from '../../../../routing/words/counted.ts';
import { holdPanels } from '../../../document/edits/charging/hold-panels.ts';
import { useDocumentStore } from '../../../document/use-document.tsx';

/** The least amperes of every managed panel with which the rule of the lot serves its cars, set with one act. */
export function LeastCeilings({ site, day }: { readonly site: Site; readonly day: ChargingDay }) {
  const [found, setFound] = useState<{ readonly site: Site; readonly days: readonly DayFigures[] } | null>(null);
  if (day.limits !== undefined || !site.equipment.some(({ managedAmps }) => managedAmps !== undefined)) return null;
  const days = found?.site === site ? found.days : null;
  const own = days?.find((one) => one.day === day.id)?.ceilings ?? [];
  const withCeilings = days?.filter(({ ceilings }) => ceilings.length > 0) ?? [];
  return (
    <section className="day-best" aria-label="Least ceilings" aria-live="polite">
      <button type="button" onClick={() => setFound({ site, days: dayFigures(site) })}>
        Find the least ceiling of each panel under the rule
      </button>
      {days !== null &&
        (own.length === 0 ? (
          <p>{STRATEGY_WORDS.unmanaged}: no ceiling is asked of any panel.</p>
        ) : (
          <Ceilings ceilings={own} act="Set the managed amperes" />
        ))}
      {withCeilings.length > 1 && (
        <Ceilings
          of={`The largest over ${counted(withCeilings.length, 'day')}`}
          ceilings={ceilingsOfAll(withCeilings)}
          act="Set those of all days"
        />
      )}
    </section>
  );
}

interface CeilingsProps {
  readonly of?: string;
  readonly ceilings: readonly LeastCeiling[];
  readonly act: string;
}

function Ceilings({ of, ceilings, act }: CeilingsProps) {
  const document = useDocumentStore();
  const due = ceilings.flatMap(({ limit, least }) =>
    least === null || least === 0 ? [] : [{ id: limit, amps: least }],
  );
  return (
    <>
      <p>
        {of !== undefined && `${of}: `}
        {ceilings
          .map(({ limit, least }) => `${limit}: ${least === null ? 'no ceiling serves all' : `${least} A`}`)
          .join('; ')}
      </p>
      {due.length > 0 && (
        <button
          type="button"
          onClick={() => {
            const { file, apply } = document.getState();
            apply(holdPanels(file, due));
          }}
        >
          {act}: {due.map(({ id, amps }) => `${id} ${amps} A`).join(', ')}
        </button>
      )}
    </>
  );
}
