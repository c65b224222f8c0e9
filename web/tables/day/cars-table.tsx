import { clockOf } from '../../../calc/day/clock.ts';
import type { DayView } from '../../../calc/day/day-view.ts';
import { Scroller } from '../../parts/scroller.tsx';

/** Cars past so many are counted, not listed: the sheets have them all. */
const MOST_ROWS = 400;

interface CarsTableProps {
  readonly view: DayView;
  readonly choose: (charger: string) => void;
}

/** The figures behind the pictures: a row a car, those who leave short first. */
export function CarsTable({ view, choose }: CarsTableProps) {
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
              <td>{clockOf(view.from + car.arrives)}</td>
              <td>{clockOf(view.from + car.leaves)}</td>
              <td>{car.need.toFixed(1)} kWh</td>
              <td>{car.most.toFixed(1)} kWh</td>
              <td>{car.got.toFixed(1)} kWh</td>
              <td>{car.isShort ? `${(car.most - car.got).toFixed(1)} kWh` : ''}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {cars.length > MOST_ROWS && <p className="quiet">{cars.length - MOST_ROWS} more cars are in the sheets.</p>}
    </Scroller>
  );
}
