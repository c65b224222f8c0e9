import { useMemo } from 'react';
import { withCar } from '../../../../calc/day/cars/listed-cars.ts';
import { clockOf } from '../../../../calc/day/clock.ts';
import type { DayInput } from '../../../../calc/day/day-input.ts';
import type { CarView, DayView } from '../../../../calc/day/figures/day-view.ts';
import { energyWords, lackWords, NO_STALL, NO_STEP } from '../../../../calc/day/figures/day-words.ts';
import { worldOf } from '../../../../calc/day/simulated/world.ts';
import type { ChargingDay } from '../../../../routing/site/site.ts';
import { changeDay } from '../../../document/edits/charging/days.ts';
import { useDocumentStore } from '../../../document/use-document.tsx';
import { type ListColumn, WindowedTable } from '../../../parts/windowed-table.tsx';
import { NeedField, TimeField } from './car-fields.tsx';

/** Of a day of more cars the figures are read, not typed: a field is dearer than a word. */
const MOST_TYPED = 100;

interface CarsTableProps {
  readonly day: ChargingDay;
  readonly input: DayInput;
  readonly view: DayView;
  readonly choose: (charger: string) => void;
}

/** A car of the day; null where it finds no stall. */
interface CarRow {
  readonly car: number;
  readonly at: CarView | null;
  /** Whether it stands there for a whole step of the day at all. */
  readonly comes: boolean;
}

/** The figures behind the pictures: a row a car, those who find no stall and those who leave short first. */
export function CarsTable({ day, input, view, choose }: CarsTableProps) {
  const document = useDocumentStore();
  const rows = useMemo(() => carRows(input, view), [input, view]);
  const set = (car: number, patch: Parameters<typeof withCar>[3]): void => {
    const { file, apply } = document.getState();
    apply(changeDay(file, withCar(day, input, car, patch)));
  };
  const isTyped = input.cars.length <= MOST_TYPED;
  const time = ({ car, at }: CarRow, field: 'arrive' | 'leave') => {
    const own = input.cars[car]!;
    if (isTyped)
      return (
        <TimeField
          name={`car ${car + 1} ${field === 'arrive' ? 'arrives' : 'leaves'}`}
          value={own[field]}
          onChange={(value) => set(car, { [field]: value })}
        />
      );
    return at === null ? own[field] : clockOf(view.from + (field === 'arrive' ? at.arrives : at.leaves));
  };
  const columns: readonly ListColumn<CarRow>[] = [
    {
      head: 'charger',
      cell: ({ at, comes }) =>
        at === null ? (
          <span className={comes ? 'failing' : 'quiet'}>{comes ? NO_STALL : NO_STEP}</span>
        ) : (
          <button type="button" className="link" onClick={() => choose(at.charger)}>
            {at.charger}
          </button>
        ),
      sort: ({ at }) => at?.charger ?? '',
    },
    { head: 'arrives', cell: (row) => time(row, 'arrive'), sort: ({ car, at }) => at?.arrives ?? car },
    { head: 'leaves', cell: (row) => time(row, 'leave'), sort: ({ car, at }) => at?.leaves ?? car },
    {
      head: 'asks',
      numeric: true,
      cell: ({ car }) =>
        isTyped ? (
          <NeedField name={`car ${car + 1} asks`} value={input.cars[car]!.kwh} onChange={(kwh) => set(car, { kwh })} />
        ) : (
          energyWords(input.cars[car]!.kwh)
        ),
      sort: ({ car }) => input.cars[car]!.kwh,
    },
    { head: 'could get', numeric: true, cell: ({ at }) => energyWords(at?.most ?? 0), sort: ({ at }) => at?.most ?? 0 },
    { head: 'gets', numeric: true, cell: ({ at }) => energyWords(at?.got ?? 0), sort: ({ at }) => at?.got ?? 0 },
    {
      head: 'lacks',
      numeric: true,
      cell: ({ at }) => (at?.isShort ? lackWords(at.most - at.got) : ''),
      sort: ({ at }) => (at === null ? 0 : at.most - at.got),
    },
  ];
  return (
    <div className="day-table">
      <p className="quiet small">Cars: those who find no stall and those who leave short first.</p>
      <WindowedTable
        name="Cars"
        rows={rows}
        columns={columns}
        keyOf={({ car }) => String(car)}
        stateOf={({ at, comes }) => ((at === null ? comes : at.isShort) ? 'fail' : undefined)}
      />
    </div>
  );
}

function carRows(input: DayInput, view: DayView): readonly CarRow[] {
  const at = new Map(view.cars.map((one) => [one.car, one]));
  const rank = ({ at: own, comes }: CarRow): number => (own === null ? (comes ? 0 : 3) : own.isShort ? 1 : 2);
  return worldOf(input)
    .stays.map(({ first, end }, car): CarRow => ({ car, at: at.get(car) ?? null, comes: first < end }))
    .sort((a, b) => rank(a) - rank(b) || a.car - b.car);
}
