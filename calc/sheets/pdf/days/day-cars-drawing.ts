import { addTo } from '../../../../routing/lists/grouping.ts';
import type { CarView, DayView } from '../../../day/figures/day-view.ts';
import { lackWords } from '../../../day/figures/day-words.ts';
import type { Area } from '../kit/area.ts';
import { GREY, PENS } from '../kit/ink.ts';
import type { Pen } from '../kit/pen.ts';
import { drawHours, plotOf, xOf } from './day-axes.ts';

/** Sizes of the lettering: no row of a charger is lower, or its name would lie on the next. */
const LEAST_ROW = 1.15;
const MOST_ROW = 2.2;
const FILLED = '#8d9093';
const DASHED = { ...PENS.plain, dash: [1, 0.6] };

/**
 * A row for each charger, a bar for each car: outlined while it stands there, filled as high as it charges, dashed where
 * it leaves short. Where there are more chargers than room, those with cars that leave short are drawn first; how many
 * are drawn is returned.
 */
export function drawCars(pen: Pen, area: Area, view: DayView, chargers: readonly string[]): number {
  const { small } = pen.lettering.sizes;
  const plot = plotOf(area, small);
  const carsOf = new Map<string, CarView[]>();
  for (const car of view.cars) addTo(carsOf, car.charger, car);
  const fit = Math.floor(plot.height / (LEAST_ROW * small));
  const isShort = (charger: string): boolean => (carsOf.get(charger) ?? []).some((car) => car.isShort);
  const drawn =
    chargers.length <= fit
      ? chargers
      : new Set([...chargers.filter(isShort), ...chargers.filter((one) => !isShort(one))].slice(0, fit));
  const rows = chargers.filter((one) => drawn === chargers || (drawn as ReadonlySet<string>).has(one));
  const row = Math.min(MOST_ROW * small, plot.height / Math.max(1, rows.length));
  const used = { ...plot, y: plot.y + plot.height - row * rows.length, height: row * rows.length };
  drawHours(pen, used, view);
  rows.forEach((charger, i) => {
    const y = used.y + used.height - (i + 1) * row;
    pen.text(charger, [used.x - 0.5 * small, y + 0.5 * row - 0.35 * small], { size: small, anchor: 'right' });
    for (const car of carsOf.get(charger) ?? []) drawBar(pen, used, view, car, y + 0.12 * row, 0.76 * row);
  });
  return rows.length;
}

function drawBar(pen: Pen, plot: Area, view: DayView, car: CarView, y: number, height: number): void {
  const { small } = pen.lettering.sizes;
  const x = (minute: number): number => xOf(plot, view, minute);
  for (let step = 0; step < view.steps; step++) {
    const amps = car.amps[step]!;
    if (amps > 0)
      pen.fillArea(
        {
          x: x(step * view.step),
          y,
          width: x((step + 1) * view.step) - x(step * view.step),
          height: (height * amps) / car.max,
        },
        FILLED,
      );
  }
  const bar = { x: x(car.arrives), y, width: x(car.leaves) - x(car.arrives), height };
  pen.rectangle(bar, car.isShort ? DASHED : { ...PENS.thin, colour: GREY });
  if (!car.isShort) return;
  const words = `${lackWords(car.most - car.got)} short`;
  const room = plot.x + plot.width - (bar.x + bar.width);
  const isLate = room < pen.lettering.width(words, small) + small;
  pen.text(words, [isLate ? bar.x - 3 : bar.x + bar.width + 3, y + 0.5 * height - 0.35 * small], {
    size: small,
    anchor: isLate ? 'right' : 'left',
  });
}
