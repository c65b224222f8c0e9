import type { DayInput } from '../day-input.ts';
import { kwPerAmp } from '../simulated/phasors.ts';
import type { CarView } from './day-view.ts';

/** Kilowatts that the chargers of a panel give in each step. */
export interface PanelLoad {
  readonly panel: string;
  readonly kw: readonly number[];
}

/** The load of a day by the panel that feeds it, in the order in which the chargers name the panels. */
export function panelLoads(
  { cars, steps }: { readonly cars: readonly Pick<CarView, 'charger' | 'amps'>[]; readonly steps: number },
  { chargers }: DayInput,
  panelOf: ReadonlyMap<string, string>,
): readonly PanelLoad[] {
  const loads = new Map<string, number[]>();
  const perAmp = new Map<string, number>();
  for (const { id, lines, volts } of chargers) {
    perAmp.set(id, kwPerAmp(lines, volts));
    const panel = panelOf.get(id);
    if (panel !== undefined && !loads.has(panel)) loads.set(panel, new Array<number>(steps).fill(0));
  }
  for (const { charger, amps } of cars) {
    const kw = loads.get(panelOf.get(charger) ?? '');
    if (kw === undefined) continue;
    for (let step = 0; step < steps; step++) kw[step]! += amps[step]! * perAmp.get(charger)!;
  }
  return Array.from(loads, ([panel, kw]) => ({ panel, kw }));
}
