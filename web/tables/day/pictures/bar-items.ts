import type { CarView } from '../../../../calc/day/figures/day-view.ts';
import { addTo } from '../../../../routing/lists/grouping.ts';

/** A charger's row, in the order of the stalls. */
export interface BarRow {
  readonly charger: string;
  readonly label: string;
  readonly stalls: number;
}

/** What the keys come to, one after another: the bar of a car, or a row without one. */
export interface BarItem {
  readonly key: string;
  readonly row: number;
  readonly charger: string;
  readonly car: CarView | null;
}

export interface BarItems {
  readonly items: readonly BarItem[];
  readonly ofCharger: ReadonlyMap<string, readonly CarView[]>;
}

export const keyOfCar = (car: number): string => `car ${car}`;

/** Row by row, in each as the cars come. */
export function barItems(rows: readonly BarRow[], cars: readonly CarView[]): BarItems {
  const ofCharger = new Map<string, CarView[]>();
  for (const car of cars.toSorted((a, b) => a.arrives - b.arrives)) addTo(ofCharger, car.charger, car);
  const items = rows.flatMap(({ charger }, row): BarItem[] => {
    const own = ofCharger.get(charger) ?? [];
    if (own.length === 0) return [{ key: `row ${charger}`, row, charger, car: null }];
    return own.map((car) => ({ key: keyOfCar(car.car), row, charger, car }));
  });
  return { items, ofCharger };
}
