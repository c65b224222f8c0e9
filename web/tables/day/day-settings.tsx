import { type ChargingDay, DAY_STEPS } from '../../../routing/site/schema/day-schema.ts';
import { changeDay } from '../../document/edits/charging/days.ts';
import { useDocumentStore } from '../../document/use-document.tsx';
import { ChoiceField, NumberField, TextField } from '../../parts/fields.tsx';
import { Fold } from '../../parts/fold.tsx';
import { ClockField } from './cars/clock-field.tsx';
import { TariffForm } from './tariff-form.tsx';

/** Common practice, no source: cars charge in full up to four fifths. */
const TAPER = { above: 0.8, last: 0.2 };
const STEP = 15;

interface SettingsProps {
  readonly day: ChargingDay;
  /** Kept by who shows it: it stays open where a day can no longer be worked. */
  readonly isOpen: boolean;
  readonly onOpen: (isOpen: boolean) => void;
}

/** The hours of a day, its cords and its tariff. */
export function DaySettings({ day, isOpen, onOpen }: SettingsProps) {
  const document = useDocumentStore();
  const set = (next: ChargingDay): void => {
    const { file, apply } = document.getState();
    apply(changeDay(file, next));
  };
  const { name: _, ...nameless } = day;
  const { taper, ...untapered } = day;
  const { tariff, ...free } = day;
  const percent = (part: number): number => Number((100 * part).toPrecision(12));
  return (
    <Fold open={isOpen} onFold={onOpen} summary="Hours, cords and tariff of the day">
      <div className="day-settings">
        <TextField
          label="name"
          value={day.name ?? ''}
          onChange={(name) => set(name === '' ? nameless : { ...day, name })}
        />
        <ClockField label="begins" value={day.from} onChange={(from) => set({ ...day, from })} />
        <ClockField label="ends" value={day.to} onChange={(to) => set({ ...day, to })} />
        <ChoiceField
          label="in steps of"
          value={String(day.step ?? STEP)}
          choices={DAY_STEPS.map(String)}
          words={(minutes) => `${minutes} min`}
          onChange={(minutes) => set({ ...day, step: DAY_STEPS.find((one) => String(one) === minutes) ?? STEP })}
        />
        <ChoiceField
          label="a car keeps its cord"
          value={day.hold ?? 'stay'}
          choices={['stay', 'done']}
          words={(hold) => (hold === 'stay' ? 'until it leaves' : 'until it is full')}
          onChange={(hold) => set({ ...day, hold })}
        />
        <ChoiceField
          label="cars take less as they fill"
          value={taper === undefined ? 'no' : 'yes'}
          choices={['no', 'yes']}
          words={(one) => (one === 'no' ? 'no' : 'yes, those whose battery is known')}
          onChange={(one) => set(one === 'no' ? untapered : { ...day, taper: TAPER })}
        />
        {taper !== undefined && (
          <>
            <NumberField
              label="all of it up to a charge of"
              unit="%"
              most={99.9}
              value={percent(taper.above)}
              onChange={(above) => set({ ...day, taper: { ...taper, above: above / 100 } })}
            />
            <NumberField
              label="when full still"
              unit="%"
              most={100}
              value={percent(taper.last)}
              onChange={(last) => set({ ...day, taper: { ...taper, last: last / 100 } })}
            />
          </>
        )}
        <TariffForm tariff={tariff} onChange={(next) => set(next === undefined ? free : { ...day, tariff: next })} />
      </div>
    </Fold>
  );
}
