import { useMemo, useState } from 'react';
import { type DayView, dayView } from '../../../calc/day/figures/day-view.ts';
import { lackWords, STRATEGY_WORDS } from '../../../calc/day/figures/day-words.ts';
import { panelLoads } from '../../../calc/day/figures/panel-loads.ts';
import { dayGround, managedLimits, siteDay, strategyOf } from '../../../calc/day/planned-days.ts';
import type { Strategy } from '../../../calc/day/rules/rules.ts';
import { linesOf, treeOf } from '../../../calc/supply/tree/supply-lines.ts';
import { indexById } from '../../../routing/site/ids.ts';
import type { ChargingDay, Site } from '../../../routing/site/site.ts';
import { counted } from '../../../routing/words/counted.ts';
import { changeElements } from '../../document/edits/change.ts';
import { changeDay, removeDay } from '../../document/edits/charging/days.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { usePageActions } from '../../page-state/page-actions.ts';
import { usePhone } from '../../parts/phone.ts';
import { refsOf } from '../../words/refs.ts';
import { useTableFacts } from '../table-facts.ts';
import { BestPossible, type FoundBest } from './best/best-possible.tsx';
import { LeastCeilings } from './best/least-ceilings.tsx';
import { CarsFile } from './cars/cars-file.tsx';
import { CarsTable } from './cars/cars-table.tsx';
import { DayControls } from './day-controls.tsx';
import { DaySettings } from './day-settings.tsx';
import { LoadTable } from './load-table.tsx';
import { MetersTable } from './meters-table.tsx';
import type { BarRow } from './pictures/bar-items.ts';
import { carWords } from './pictures/car-bar.tsx';
import { CarRows } from './pictures/car-rows.tsx';
import { LoadPicture } from './pictures/load-picture.tsx';
import { PanelPicture } from './pictures/panel-picture.tsx';
import { TimeOfDay } from './pictures/time-of-day.tsx';

/** A day of charging: who gets what under a limit that can be dragged, and what rule leaves whom short. */
export function OneDay({ day }: { readonly day: ChargingDay }) {
  const { site } = useTableFacts();
  const document = useDocumentStore();
  const { reveal } = usePageActions();
  const selection = useDocument((state) => state.selection);
  const [ceiling, setCeiling] = useState<number | null>(null);
  const [limitId, setLimitId] = useState<string | null>(null);
  const [isSetting, setSetting] = useState(false);
  const [over, setOver] = useState<number | null>(null);
  const [time, setTime] = useState<number | null>(null);
  const [found, setFound] = useState<FoundBest | null>(null);
  const wide = usePhone() ? 360 : 1000;
  const ground = dayGround(treeOf(site), linesOf(site), site.chargers, site.loads);
  const read = siteDay(day, ground);
  const strategy = strategyOf(day, ground);
  const limits = day.limits ?? ground.supply.limits;
  const wanted = limits.findIndex(({ id }) => id === limitId);
  const index = wanted >= 0 ? wanted : (managedLimits(limits, site.equipment)[0] ?? 0);
  const limit = limits[index];
  const view = useMemo(
    () => (read.ok ? dayView(read.day, strategy, limit === undefined ? -1 : index, ceiling) : null),
    [read, strategy, limit, index, ceiling],
  );
  // The best is looked for under the limit as it is dragged.
  const input = useMemo(() => {
    if (!read.ok || ceiling === null) return read.ok ? read.day : null;
    return { ...read.day, limits: read.day.limits.map((one, i) => (i === index ? { ...one, most: ceiling } : one)) };
  }, [read, ceiling, index]);
  const panelOf = useMemo(() => new Map(site.chargers.map(({ id, from }) => [id, from])), [site.chargers]);
  const rows = useMemo(() => rowsOf(site.chargers, site.stalls), [site.chargers, site.stalls]);
  const loads = useMemo(
    () => (view === null || !read.ok ? [] : panelLoads(view, read.day, panelOf)),
    [view, read, panelOf],
  );
  const remove = (): void => {
    const { file, apply } = document.getState();
    apply(removeDay(file, day.id));
  };
  if (!read.ok || view === null || input === null)
    return (
      <>
        {!read.ok && read.errors.map(({ place, says }) => <p key={place} className="fault">{`${place}: ${says}`}</p>)}
        <DaySettings day={day} isOpen={isSetting} onOpen={setSetting} />
        <button type="button" onClick={remove}>
          Delete this day
        </button>
      </>
    );
  const at = over ?? (time !== null && time < view.steps ? time : null);
  const unit = limit?.kind === 'kw' ? 'kW' : 'A';
  const managed = day.limits === undefined && site.equipment.some(({ id }) => id === limit?.id) ? limit?.id : undefined;
  const hold = (amps: number): void => {
    const { file, apply } = document.getState();
    apply(changeElements(file, [{ list: 'equipment', id: managed! }], { managedAmps: amps }));
    setCeiling(null);
  };
  const choose = (charger: string): void => {
    const { file, plan } = document.getState();
    reveal(refsOf(file, plan, charger));
  };
  const chosen = chosenChargers(site, selection);
  const best = found?.input === input ? found.best : null;
  return (
    <>
      <p className="day-says" aria-live="polite">
        <strong>{sentence(view, strategy)}</strong> {day.from} to {day.to}, {counted(view.cars.length, 'car')}
        {view.turnedAway > 0 && `, ${view.turnedAway} without a free stall`}; {view.energy.toFixed(0)} kWh, peak{' '}
        {view.peakKw.toFixed(1)} kW{view.cost > 0 && `, ${view.cost.toFixed(2)} a billing period`}.
      </p>
      <DayControls
        strategy={strategy}
        onStrategy={(one) => {
          const { file, apply } = document.getState();
          apply(changeDay(file, { ...day, strategy: one }));
        }}
        limits={limits}
        limit={limit}
        onLimit={(id) => {
          setLimitId(id);
          setCeiling(null);
        }}
        unmanaged={view.unmanaged.reduce((most, one) => Math.max(most, one), 0)}
        ceiling={ceiling}
        onCeiling={setCeiling}
        managed={managed}
        onHold={hold}
      />
      {limit === undefined ? (
        <p className="quiet">No limit is drawn above the chargers: nothing holds them back.</p>
      ) : (
        <figure className="day-figure">
          <LoadPicture
            wide={wide}
            view={view}
            unit={unit}
            best={best?.load ?? null}
            at={at}
            onAt={setOver}
            onChoose={setTime}
          />
          <figcaption className="quiet small">
            {limit.id}: filled, the fullest line under the rule; stepped edge, what is left for charging; dotted,
            without management{best !== null && '; thin, the best there could be'}.
            {at !== null && ` ${view.load[at]!.toFixed(1)} of ${view.room[at]!.toFixed(1)} ${unit} at the time marked.`}
          </figcaption>
        </figure>
      )}
      <CarRows
        wide={wide}
        day={day}
        input={read.day}
        view={view}
        rows={rows}
        chosen={chosen}
        choose={choose}
        at={at}
        time={time}
        onAt={setOver}
      />
      <TimeOfDay view={view} step={time} onStep={setTime} />
      <PanelPicture
        wide={wide}
        view={view}
        loads={loads}
        best={best?.kw ?? null}
        tariff={read.day.tariff}
        at={at}
        onAt={setOver}
        onChoose={setTime}
      />
      <LoadTable view={view} loads={loads} limit={limit?.id ?? null} unit={unit} />
      <ChosenCars view={view} chosen={chosen} />
      <BestPossible
        key={`${day.id} ${limit?.id}`}
        input={input}
        limit={limit?.id ?? null}
        unit={unit}
        managed={managed}
        onHold={hold}
        found={found}
        onFound={setFound}
      />
      <LeastCeilings site={site} day={day} />
      <DaySettings day={day} isOpen={isSetting} onOpen={setSetting} />
      <CarsTable day={day} input={read.day} view={view} choose={choose} />
      <CarsFile day={day} input={read.day} />
      <MetersTable input={read.day} strategy={strategy} />
      <button type="button" onClick={remove}>
        Delete this day
      </button>
      <p className="quiet small">
        Planning figures: real cars and drivers differ, volts are nominal, and the listing and settings of the load
        management govern.
      </p>
    </>
  );
}

/** The day of what is chosen on the board, in words. */
function ChosenCars({ view, chosen }: { readonly view: DayView; readonly chosen: ReadonlySet<string> }) {
  const cars = view.cars.filter(({ charger }) => chosen.has(charger));
  if (chosen.size === 0 || chosen.size > 8) return null;
  return (
    <ul className="day-chosen" aria-label="Cars at what is chosen">
      {[...chosen]
        .filter((charger) => !cars.some((car) => car.charger === charger))
        .map((charger) => (
          <li key={charger}>{charger}: nobody charges there that day.</li>
        ))}
      {cars.map((car) => (
        <li key={car.car}>
          {car.charger}: {carWords(car, view.from)}
        </li>
      ))}
    </ul>
  );
}

function sentence({ cars, carsShort, worstShort }: DayView, strategy: Strategy): string {
  const rule = `${STRATEGY_WORDS[strategy][0]!.toUpperCase()}${STRATEGY_WORDS[strategy].slice(1)}`;
  if (carsShort === 0) return `${rule}: nobody leaves with less than the cord could have given.`;
  return `${rule}: ${carsShort} of ${counted(cars.length, 'car')} leave short, worst by ${lackWords(worstShort)}.`;
}

/** Chargers in the order of their stalls in the file. */
function rowsOf(chargers: Site['chargers'], stalls: Site['stalls']): readonly BarRow[] {
  const place = indexById(stalls);
  const first = (ids: readonly string[]): number =>
    ids.reduce((least, id) => Math.min(least, place.get(id) ?? stalls.length), stalls.length);
  return chargers
    .toSorted((a, b) => first(a.stalls) - first(b.stalls))
    .map(({ id, stalls: own }) => ({ charger: id, label: id, stalls: own.length }));
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
