import type { DayCar } from '../day-input.ts';

export type PastedCars =
  | { readonly ok: true; readonly cars: readonly DayCar[] }
  | { readonly ok: false; readonly says: string };

const CLOCK = /^([01]?[0-9]|2[0-3]):([0-5][0-9])$/;
const MOST_LINES = 20_000;

/**
 * Cars from lines of a table: arrival, departure, kilowatt-hours, and where they are there the car's own most in kilowatts,
 * the charger it insists on, kilowatt-hours of its battery and how full it comes (0 to 1), parted by commas, semicolons,
 * tabs or blanks. A first line of words is passed over. What is wrong is told by its line.
 */
export function pastedCars(text: string): PastedCars {
  const cars: DayCar[] = [];
  const lines = text.replace(/^\ufeff/, '').split(/\r?\n/);
  for (const [i, line] of lines.entries()) {
    if (line.trim() === '') continue;
    const cells = line.trim().split(/\s*[,;\t]\s*|\s+/);
    if (cars.length === 0 && cells.every((cell) => !/\d/.test(cell))) continue;
    const [arrive, leave] = [clock(cells[0]), clock(cells[1])];
    const kwh = amount(cells[2]);
    const [maxKw, battery] = [maybeAmount(cells[3]), maybeAmount(cells[5])];
    const charger = cells[4] || undefined;
    const state = cells[6] ? part(cells[6]) : undefined;
    const wrong = (what: string, cell: string | undefined): PastedCars => ({
      ok: false,
      says: `line ${i + 1}: ${what}, got "${cell ?? ''}"`,
    });
    if (arrive === null) return wrong('expected an arrival such as 08:10', cells[0]);
    if (leave === null) return wrong('expected a departure such as 16:40', cells[1]);
    if (kwh === null) return wrong('expected kilowatt-hours', cells[2]);
    if (maxKw === null) return wrong('expected kilowatts', cells[3]);
    if (battery === null) return wrong('expected kilowatt-hours of its battery', cells[5]);
    if (state === null) return wrong('expected how full it comes, 0 to 1', cells[6]);
    cars.push({
      arrive,
      leave,
      kwh,
      ...(maxKw !== undefined && { maxKw }),
      ...(charger !== undefined && { charger }),
      ...(battery !== undefined && { battery }),
      ...(state !== undefined && { state }),
    });
    if (cars.length > MOST_LINES) return { ok: false, says: `more than ${MOST_LINES} cars` };
  }
  return cars.length === 0 ? { ok: false, says: 'there is no car in it' } : { ok: true, cars };
}

const HEAD = 'arrives,leaves,kWh,most kW,charger,battery kWh,state';

/** Cars as such a table, for a file; read back they are the same cars. */
export const carsText = (cars: readonly DayCar[]): string =>
  [
    HEAD,
    ...cars.map(({ arrive, leave, kwh, maxKw, charger, battery, state }) =>
      [arrive, leave, kwh, maxKw, charger, battery, state]
        .map((cell) => cell ?? '')
        .join(',')
        .replace(/,+$/, ''),
    ),
    '',
  ].join('\r\n');

function clock(cell: string | undefined): string | null {
  const found = CLOCK.exec(cell ?? '');
  return found === null ? null : `${found[1]!.padStart(2, '0')}:${found[2]}`;
}

function amount(cell: string | undefined): number | null {
  if (cell === undefined || !/^\d{1,5}(\.\d+)?$/.test(cell)) return null;
  const value = Number(cell);
  return value > 0 ? value : null;
}

const maybeAmount = (cell: string | undefined): number | null | undefined => (cell ? amount(cell) : undefined);

function part(cell: string): number | null {
  const value = /^(0|1|0?\.\d+)(\.0*)?$/.test(cell) ? Number(cell) : Number.NaN;
  return value >= 0 && value <= 1 ? value : null;
}
