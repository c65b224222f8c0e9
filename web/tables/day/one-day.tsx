import { type ReactNode, useMemo, useState } from 'react';
import type { DayInput } from '../../../calc/day/day-input.ts';
import type { DayView } from '../../../calc/day/figures/day-view.ts';
import { panelLoads } from '../../../calc/day/figures/panel-loads.ts';
import type { Strategy } from '../../../calc/day/rules/rules.ts';
import { indexById } from '../../../routing/site/ids.ts';
import type { ChargingDay, Site } from '../../../routing/site/site.ts';
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
import { ChosenCars, DaySays, LimitFigure } from './day-parts.tsx';
import { DaySettings } from './day-settings.tsx';
import { LoadTable } from './load-table.tsx';
import { MetersTable } from './meters-table.tsx';
import type { BarRow } from './pictures/bar-items.ts';
import { CarRows } from './pictures/car-rows.tsx';
import { PanelPicture } from './pictures/panel-picture.tsx';
import { TimeOfDay } from './pictures/time-of-day.tsx';
import { useUnderLimit } from './use-under-limit.ts';

/** A day of charging: who gets what under a limit that can be dragged, and what rule leaves whom short. */
export function OneDay({ day }: { readonly day: ChargingDay }) {
  const { site } = useTableFacts();
  const document = useDocumentStore();
  const { chosen, choose } = useChosenChargers(site);
  const [isSetting, setSetting] = useState(false);
  const [over, setOver] = useState<number | null>(null);
  const [time, setTime] = useState<number | null>(null);
  const [found, setFound] = useState<FoundBest | null>(null);
  const wide = usePhone() ? 360 : 1000;
  const under = useUnderLimit(day, site);
  const { read, strategy, limit, view, input, managed } = under;
  const settings = <DaySettings day={day} isOpen={isSetting} onOpen={setSetting} />;
  const panelOf = useMemo(() => new Map(site.chargers.map(({ id, from }) => [id, from])), [site.chargers]);
  const rows = useMemo(() => rowsOf(site.chargers, site.stalls), [site.chargers, site.stalls]);
  const loads = useMemo(
    () => (view === null || !read.ok ? [] : panelLoads(view, read.day, panelOf)),
    [view, read, panelOf],
  );
  if (!read.ok || view === null || input === null)
    return (
      <>
        {!read.ok && read.errors.map(({ place, says }) => <p key={place} className="fault">{`${place}: ${says}`}</p>)}
        {settings}
        <DeleteDay day={day} />
      </>
    );
  const at = over ?? (time !== null && time < view.steps ? time : null);
  const unit = limit?.kind === 'kw' ? 'kW' : 'A';
  const hold = (amps: number): void => {
    const { file, apply } = document.getState();
    apply(changeElements(file, [{ list: 'equipment', id: managed! }], { managedAmps: amps }));
    under.setCeiling(null);
  };
  const best = found?.input === input ? found.best : null;
  return (
    <>
      <DaySays day={day} view={view} strategy={strategy} />
      <DayControls
        strategy={strategy}
        onStrategy={(one) => {
          const { file, apply } = document.getState();
          apply(changeDay(file, { ...day, strategy: one }));
        }}
        limits={under.limits}
        limit={limit}
        onLimit={under.setLimit}
        unmanaged={view.unmanaged.reduce((most, one) => Math.max(most, one), 0)}
        ceiling={under.ceiling}
        onCeiling={under.setCeiling}
        managed={managed}
        onHold={hold}
      />
      {limit === undefined ? (
        <p className="quiet">No limit is drawn above the chargers: nothing holds them back.</p>
      ) : (
        <LimitFigure
          wide={wide}
          view={view}
          limit={limit.id}
          unit={unit}
          best={best?.load ?? null}
          at={at}
          onAt={setOver}
          onChoose={setTime}
        />
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
      <DayTables day={day} input={read.day} view={view} strategy={strategy} choose={choose} settings={settings} />
      <DeleteDay day={day} />
      <p className="quiet small">
        Planning figures: real cars and drivers differ, volts are nominal, and the listing and settings of the load
        management govern.
      </p>
    </>
  );
}

interface DayTablesProps {
  readonly day: ChargingDay;
  readonly input: DayInput;
  readonly view: DayView;
  readonly strategy: Strategy;
  readonly choose: (charger: string) => void;
  /** The form of the day, which stays open while the day is otherwise. */
  readonly settings: ReactNode;
}

/** Below the pictures: the least ceilings, the form of the day, its cars and what its chargers meter. */
function DayTables({ day, input, view, strategy, choose, settings }: DayTablesProps) {
  const { site } = useTableFacts();
  return (
    <>
      <LeastCeilings site={site} day={day} />
      {settings}
      <CarsTable day={day} input={input} view={view} choose={choose} />
      <CarsFile day={day} input={input} />
      <MetersTable input={input} strategy={strategy} />
    </>
  );
}

function DeleteDay({ day }: { readonly day: ChargingDay }) {
  const document = useDocumentStore();
  const remove = (): void => {
    const { file, apply } = document.getState();
    apply(removeDay(file, day.id));
  };
  return (
    <button type="button" onClick={remove}>
      Delete this day
    </button>
  );
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

/** The chargers of what is selected on the board, and the way to select one of them there. */
function useChosenChargers(site: Site) {
  const document = useDocumentStore();
  const { reveal } = usePageActions();
  const selection = useDocument((state) => state.selection);
  const choose = (charger: string): void => {
    const { file, plan } = document.getState();
    reveal(refsOf(file, plan, charger));
  };
  return { chosen: chosenChargers(site, selection), choose };
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
