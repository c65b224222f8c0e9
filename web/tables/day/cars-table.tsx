import { clockOf } from '../../../calc/day/clock.ts';
import type { DayInput } from '../../../calc/day/day-input.ts';
import type { DayView } from '../../../calc/day/day-view.ts';
import { lackWords } from '../../../calc/day/day-words.ts';
import { withCar } from '../../../calc/day/listed-cars.ts';
import type { ChargingDay } from '../../../routing/site/site.ts';
import { changeDay } from '../../document/edits/days.ts';
import { useDocumentStore } from '../../document/use-document.tsx';
import { Scroller } from '../../parts/scroller.tsx';

/** Cars past so many are counted, not listed: the sheets have them all. */
const MOST_ROWS = 400;

/** Of a day of more cars the times are read, not typed: a field is dearer than a word. */
const MOST_TYPED = 100;

interface CarsTableProps {
  readonly day: ChargingDay;
  readonly input: DayInput;
  readonly view: DayView;
  readonly choose: (charger: string) => void;
}

/** The figures behind the pictures: a row a car, those who leave short first. */
export function CarsTable({ day, input, view, choose }: CarsTableProps) {
  const document = useDocumentStore();
  const set = (car: number, field: 'arrive' | 'leave', time: string): void => {
    if (!/^\d\d:\d\d$/.test(time) || time === input.cars[car]![field]) return;
    const { file, apply } = document.getState();
    apply(changeDay(file, withCar(day, input, car, { [field]: time })));
  };
  const time = (car: number, field: 'arrive' | 'leave', shown: string) =>
    view.cars.length > MOST_TYPED ? (
      shown
    ) : (
      <input
        key={input.cars[car]![field]}
        type="time"
        aria-label={`car ${car + 1} ${field === 'arrive' ? 'arrives' : 'leaves'}`}
        defaultValue={input.cars[car]![field]}
        onBlur={(event) => set(car, field, event.target.value)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') set(car, field, event.currentTarget.value);
        }}
      />
    );
  const cars = [...view.cars].sort((a, b) => Number(b.isShort) - Number(a.isShort) || a.car - b.car);
  return (
    <Scroller aria-label="Cars" className="day-cars">
      <table>
        <caption className="quiet">Cars, those who leave short first</caption>
        <thead>
          <tr>
            <th scope="col">charger</th>
            <th scope="col">arrives</th>
            <th scope="col">leaves</th>
            <th scope="col">asks</th>
            <th scope="col">could get</th>
            <th scope="col">gets</th>
            <th scope="col">lacks</th>
          </tr>
        </thead>
        <tbody>
          {cars.slice(0, MOST_ROWS).map((car) => (
            <tr key={car.car}>
              <th scope="row">
                <button type="button" className="link" onClick={() => choose(car.charger)}>
                  {car.charger}
                </button>
              </th>
              <td>{time(car.car, 'arrive', clockOf(view.from + car.arrives))}</td>
              <td>{time(car.car, 'leave', clockOf(view.from + car.leaves))}</td>
              <td>{car.need.toFixed(1)} kWh</td>
              <td>{car.most.toFixed(1)} kWh</td>
              <td>{car.got.toFixed(1)} kWh</td>
              <td>{car.isShort ? lackWords(car.most - car.got) : ''}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {cars.length > MOST_ROWS && <p className="quiet">{cars.length - MOST_ROWS} more cars are in the sheets.</p>}
    </Scroller>
  );
}
