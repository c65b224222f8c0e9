import type { DayCar } from './day-input.ts';

export type PastedCars =
  | { readonly ok: true; readonly cars: readonly DayCar[] }
  | { readonly ok: false; readonly says: string };

const CLOCK = /^([01]?[0-9]|2[0-3]):([0-5][0-9])$/;
const MOST_LINES = 20_000;

/**
 * Cars from lines of a table: arrival, departure, kilowatt-hours, and where it is there the car's own most in kilowatts,
 * parted by commas, semicolons, tabs or blanks. A first line of words is passed over. What is wrong is told by its line.
 */
export function pastedCars(text: string): PastedCars {
  const cars: DayCar[] = [];
  const lines = text.split(/\r?\n/);
  for (const [i, line] of lines.entries()) {
    if (line.trim() === '') continue;
    const cells = line.trim().split(/\s*[,;\t]\s*|\s+/);
    if (cars.length === 0 && cells.every((cell) => !/\d/.test(cell))) continue;
    const [arrive, leave] = [clock(cells[0]), clock(cells[1])];
    const kwh = amount(cells[2]);
    const maxKw = cells[3] === undefined || cells[3] === '' ? undefined : amount(cells[3]);
    const wrong = (what: string, cell: string | undefined): PastedCars => ({
      ok: false,
      says: `line ${i + 1}: ${what}, got "${cell ?? ''}"`,
    });
    if (arrive === null) return wrong('expected an arrival such as 08:10', cells[0]);
    if (leave === null) return wrong('expected a departure such as 16:40', cells[1]);
    if (kwh === null) return wrong('expected kilowatt-hours', cells[2]);
    if (maxKw === null) return wrong('expected kilowatts', cells[3]);
    cars.push({ arrive, leave, kwh, ...(maxKw !== undefined && { maxKw }) });
    if (cars.length > MOST_LINES) return { ok: false, says: `more than ${MOST_LINES} cars` };
  }
  return cars.length === 0 ? { ok: false, says: 'there is no car in it' } : { ok: true, cars };
}

function clock(cell: string | undefined): string | null {
  const found = CLOCK.exec(cell ?? '');
  return found === null ? null : `${found[1]!.padStart(2, '0')}:${found[2]}`;
}

function amount(cell: string | undefined): number | null {
  if (cell === undefined || !/^\d{1,5}(\.\d+)?$/.test(cell)) return null;
  const value = Number(cell);
  return value > 0 ? value : null;
}
