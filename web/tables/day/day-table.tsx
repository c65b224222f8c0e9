import { useMemo, useState } from 'react';
import { clockOf } from '../../../calc/day/clock.ts';
import { type DayView, dayView } from '../../../calc/day/day-view.ts';
import { STRATEGY_WORDS } from '../../../calc/day/day-words.ts';
import { dayGround, siteDay, strategyOf } from '../../../calc/day/planned-days.ts';
import { STRATEGIES, type Strategy } from '../../../calc/day/rules/rules.ts';
import { linesOf, treeOf } from '../../../calc/supply/tree/supply-lines.ts';
import type { ChargingDay, Site } from '../../../routing/site/site.ts';
import { counted } from '../../../routing/words/counted.ts';
import { changeElements } from '../../document/edits/change.ts';
import { changeDay, removeDay } from '../../document/edits/days.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { usePageActions } from '../../page-state/page-actions.ts';
import { ChoiceField } from '../../parts/fields.tsx';
import { usePhone } from '../../parts/phone.ts';
import { Scroller } from '../../parts/scroller.tsx';
import { refsOf } from '../../words/refs.ts';
import { useTableFacts } from '../table-facts.ts';
import { BestPossible } from './best-possible.tsx';
import { CarRows } from './car-rows.tsx';
import { CarsTable } from './cars-table.tsx';
import { LoadPicture } from './load-picture.tsx';
import { NewDay } from './new-day.tsx';
import './day.css';

/** Chargers past so many have no row of their own: the table has the cars. */
const MOST_ROWS = 120;

/** A day of charging: who gets what under a limit that can be dragged, and what rule leaves whom short. */
export function DayTable() {
  const { site } = useTableFacts();
  const [wanted, setWanted] = useState<string | null>(null);
  const day = site.days.find(({ id }) => id === wanted) ?? site.days[0];
  if (day === undefined) return <NewDay />;
  return (
    <Scroller aria-label="Day of charging">
      <div className="day-whole">
        {site.days.length > 1 && (
          <ChoiceField
            label="day"
            value={day.id}
            choices={site.days.map(({ id }) => id)}
            words={(id) => site.days.find((one) => one.id === id)?.name ?? id}
            onChange={setWanted}
          />
        )}
        <OneDay key={day.id} day={day} site={site} />
        <details>
          <summary>Another day</summary>
          <NewDay />
        </details>
      </div>
    </Scroller>
  );
}

function OneDay({ day, site }: { readonly day: ChargingDay; readonly site: Site }) {
  const document = useDocumentStore();
  const { reveal } = usePageActions();
  const selection = useDocument((state) => state.selection);
  const [ceiling, setCeiling] = useState<number | null>(null);
  const [limitId, setLimitId] = useState<string | null>(null);
  const [at, setAt] = useState<number | null>(null);
  const wide = usePhone() ? 360 : 1000;
  const ground = dayGround(treeOf(site), linesOf(site), site.chargers, site.loads);
  const read = siteDay(day, ground);
  const strategy = strategyOf(day, ground);
  const limits = day.limits ?? ground.supply.limits;
  const held = new Set(site.equipment.flatMap(({ id, managedAmps }) => (managedAmps === undefined ? [] : [id])));
  // The first that management sets is what one would ask about.
  const asked = limits.findIndex(({ id }) => (limitId === null ? held.has(id) : id === limitId));
  const index = Math.max(0, asked);
  const limit = limits[index];
  const view = useMemo(
    () => (read.ok ? dayView(read.day, strategy, limit === undefined ? -1 : index, ceiling) : null),
    [read, strategy, limit, index, ceiling],
  );
  const remove = (): void => {
    const { file, apply } = document.getState();
    apply(removeDay(file, day.id));
  };
  if (!read.ok || view === null)
    return (
      <>
        {!read.ok && read.errors.map(({ place, says }) => <p key={place} className="fault">{`${place}: ${says}`}</p>)}
        <button type="button" onClick={remove}>
          Delete this day
        </button>
      </>
    );
  const unit = limit?.kind === 'kw' ? 'kW' : 'A';
  const standing = limit === undefined ? 0 : ((limit.kind === 'kw' ? limit.kw : limit.amps) ?? 0);
  const managed = day.limits === undefined && site.equipment.some(({ id }) => id === limit?.id) ? limit?.id : undefined;
  const choose = (charger: string): void => {
    const { file, plan } = document.getState();
    reveal(refsOf(file, plan, charger));
  };
  const chosen = chosenChargers(site, selection);
  return (
    <>
      <p className="day-says" aria-live="polite">
        <strong>{sentence(view, strategy)}</strong> {day.from} to {day.to}, {counted(view.cars.length, 'car')}
        {view.turnedAway > 0 && `, ${view.turnedAway} without a free stall`}; {view.energy.toFixed(0)} kWh, peak{' '}
        {view.peakKw.toFixed(1)} kW{view.cost > 0 && `, ${view.cost.toFixed(2)} a billing period`}.
      </p>
      <div className="day-controls">
        <ChoiceField
          label="rule"
          value={strategy}
          choices={STRATEGIES}
          words={(one) => STRATEGY_WORDS[one]}
          onChange={(one) => {
            const { file, apply } = document.getState();
            apply(changeDay(file, { ...day, strategy: one }));
          }}
        />
        {limits.length > 1 && (
          <ChoiceField
            label="limit"
            value={limit!.id}
            choices={limits.map(({ id }) => id)}
            onChange={(id) => {
              setLimitId(id);
              setCeiling(null);
            }}
          />
        )}
        {limit !== undefined && (
          <label className="day-ceiling">
            what if it were {Math.round(ceiling ?? standing)} {unit}
            <input
              type="range"
              min={0}
              max={Math.max(10, Math.ceil(Math.max(standing, ...view.unmanaged) * 1.2))}
              step={1}
              value={ceiling ?? standing}
              onChange={(event) => setCeiling(event.target.valueAsNumber)}
            />
          </label>
        )}
        {ceiling !== null && ceiling !== standing && (
          <button type="button" onClick={() => setCeiling(null)}>
            Back to {Math.round(standing)} {unit}
          </button>
        )}
        {managed !== undefined && ceiling !== null && ceiling > 0 && ceiling !== standing && (
          <button
            type="button"
            onClick={() => {
              const { file, apply } = document.getState();
              apply(changeElements(file, [{ list: 'equipment', id: managed }], { managedAmps: ceiling }));
              setCeiling(null);
            }}
          >
            Hold {managed} to {ceiling} A
          </button>
        )}
        <button type="button" onClick={remove}>
          Delete this day
        </button>
      </div>
      {limit === undefined ? (
        <p className="quiet">No limit is drawn above the chargers: nothing holds them back.</p>
      ) : (
        <>
          <p className="quiet small">
            {limit.id}: filled, the fullest line under the rule; stepped edge, what is left for charging; thin, without
            management.
            {at !== null &&
              ` At ${clockOf(view.from + at * view.step)}: ${view.load[at]!.toFixed(1)} of ${view.room[at]!.toFixed(1)} ${unit}.`}
          </p>
          <LoadPicture wide={wide} view={view} unit={unit} at={at} onAt={setAt} />
        </>
      )}
      {site.chargers.length <= MOST_ROWS && (
        <CarRows wide={wide} view={view} rows={rowsOf(site)} chosen={chosen} choose={choose} at={at} onAt={setAt} />
      )}
      <BestPossible
        key={`${day.id} ${limit?.id}`}
        input={read.day}
        limit={limit?.id ?? null}
        unit={unit}
        managed={managed}
      />
      <CarsTable view={view} choose={choose} />
      <p className="quiet small">
        Planning figures: real cars and drivers differ, volts are nominal, and the listing and settings of the load
        management govern.
      </p>
    </>
  );
}

function sentence({ cars, carsShort, worstShort }: DayView, strategy: Strategy): string {
  const rule = `${STRATEGY_WORDS[strategy][0]!.toUpperCase()}${STRATEGY_WORDS[strategy].slice(1)}`;
  if (carsShort === 0) return `${rule}: nobody leaves with less than the cord could have given.`;
  return `${rule}: ${carsShort} of ${counted(cars.length, 'car')} leave short, worst by ${worstShort.toFixed(1)} kWh.`;
}

/** Chargers in the order of their stalls in the file. */
function rowsOf({ chargers, stalls }: Site): { charger: string; label: string }[] {
  const place = new Map(stalls.map(({ id }, i) => [id, i]));
  const first = (ids: readonly string[]): number => Math.min(...ids.map((id) => place.get(id) ?? Infinity), Infinity);
  return chargers
    .toSorted((a, b) => first(a.stalls) - first(b.stalls) || 0)
    .map(({ id }) => ({ charger: id, label: id }));
}

function chosenChargers(
  site: Site,
  selection: readonly { readonly list: string; readonly id: string }[],
): ReadonlySet<string> {
  const ids = new Set(selection.map(({ id }) => id));
  if (ids.size === 0) return ids;
  return new Set(
    site.chargers
      .filter(({ id, drop, stalls }) => ids.has(id) || ids.has(drop) || stalls.some((one) => ids.has(one)))
      .map(({ id }) => id),
  );
}
