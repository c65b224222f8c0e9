import { dayWindow } from '../../../day/clock.ts';
import type { DayInput, Tariff } from '../../../day/day-input.ts';
import { energyPrices } from '../../../day/figures/cost.ts';
import type { DayView } from '../../../day/figures/day-view.ts';
import type { PanelLoad } from '../../../day/figures/panel-loads.ts';
import type { Area } from '../kit/area.ts';
import { BLACK, GREY, PENS, WHITE } from '../kit/ink.ts';
import { CAP } from '../kit/lettering/letters.ts';
import { shortened } from '../kit/lettering/lines-of-text.ts';
import type { Pen } from '../kit/pen.ts';
import { drawHours, drawScale, plotOf, stairs } from './day-axes.ts';

const DOTTED = { ...PENS.thin, dash: [0.6, 0.8] };
/** From the axis up, in turn. */
const TINTS = ['#8d9093', '#c3c5c6', '#a8abad', '#dcddde'] as const;

/** The fullest line of a limit against what is left for charging, under the rule and without management. */
export function drawLimit(pen: Pen, area: Area, title: string, view: DayView): void {
  const { small } = pen.lettering.sizes;
  const plot = plotOf(area, small);
  const rooms = view.room.filter(Number.isFinite);
  const most =
    1.05 *
    Math.max(1, ...view.load, ...rooms, Math.min(Math.max(...view.unmanaged), 2.5 * Math.max(...rooms, ...view.load)));
  drawTitle(pen, area, title);
  const under = stairs(plot, view.load, most);
  pen.fill([[plot.x, plot.y], ...under, [plot.x + plot.width, plot.y]], TINTS[1]);
  drawScale(pen, plot, most);
  drawHours(pen, plot, view);
  pen.line(under, PENS.medium);
  pen.line(stairs(plot, view.unmanaged, most), DOTTED);
  if (rooms.length > 0) pen.line(stairs(plot, view.room, most), PENS.heavy);
}

/** Kilowatts panel upon panel, with the price of energy as a band over the axis. */
export function drawPanels(pen: Pen, area: Area, view: DayView, loads: readonly PanelLoad[], input: DayInput): void {
  const { small } = pen.lettering.sizes;
  const plot = plotOf(area, small);
  const band = input.tariff === null ? 0 : 1.5 * small;
  const chart = { ...plot, y: plot.y + band, height: plot.height - band };
  const most = 1.05 * Math.max(1, ...view.kw);
  const peaks = loads.map(({ panel, kw }) => `${panel} at most ${Math.max(...kw).toFixed(1)}`);
  drawTitle(pen, area, `Kilowatts by panel, from the axis up: ${peaks.join(', ')}`);
  let below = new Array<number>(view.steps).fill(0);
  loads.forEach(({ kw }, i) => {
    const above = kw.map((value, step) => value + below[step]!);
    pen.fill([...stairs(chart, above, most), ...stairs(chart, below, most).reverse()], TINTS[i % TINTS.length]!);
    below = above;
  });
  drawScale(pen, chart, most);
  drawHours(pen, plot, view);
  pen.line(stairs(chart, view.kw, most), PENS.plain);
  if (input.tariff !== null) drawPrices(pen, { ...plot, height: band }, input, input.tariff);
}

function drawPrices(pen: Pen, area: Area, { from, to, step }: DayInput, tariff: Tariff): void {
  const { small } = pen.lettering.sizes;
  const prices = energyPrices(dayWindow(from, to, step)!, tariff);
  const x = (k: number): number => area.x + (area.width * k) / prices.length;
  let began = 0;
  prices.forEach((price, k) => {
    if (k + 1 < prices.length && prices[k + 1] === price) return;
    pen.rectangle({ ...area, x: x(began), width: x(k + 1) - x(began) }, { ...PENS.hair, colour: GREY });
    const words = String(price ?? '');
    const wide = pen.lettering.width(words, small);
    if (wide < x(k + 1) - x(began)) {
      const [middle, y] = [(x(began) + x(k + 1)) / 2, area.y + 0.45 * small];
      // An hour's line runs through the band.
      pen.fillArea({ x: middle - wide / 2 - 1, y: y - 1, width: wide + 2, height: small * CAP + 2 }, WHITE);
      pen.text(words, [middle, y], { size: small, anchor: 'middle', colour: BLACK });
    }
    began = k + 1;
  });
}

function drawTitle(pen: Pen, { x, y, width, height }: Area, words: string): void {
  const { small } = pen.lettering.sizes;
  pen.text(shortened(words, width, small, pen.lettering, 'bold'), [x, y + height - small], {
    size: small,
    weight: 'bold',
  });
}
