import { counted } from '../../../routing/words/counted.ts';
import { PILOT_FLOOR_AMPS } from '../../supply/panels/pilot-floor.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { fullLineAmps, type LoadWish, lineShare } from './charger-amps.ts';
import type { PanelSize } from './panel-size.ts';

/** What a choice of load management came to. */
export interface LoadOutcome {
  /** Chargers on each new panel, and its size. */
  readonly panels: readonly { readonly chargers: number; readonly size: PanelSize }[];
  /** Dollars less than panels, feeders and branches at full rate, as they were weighed. */
  readonly saved: number;
}

/** How the chargers of new panels are run, and what that saves, in words. */
export function loadWords(load: LoadWish, { panels, saved }: LoadOutcome, tables: CodeTables): readonly string[] {
  if (panels.length === 0) return [];
  const chargers = panels.reduce((sum, one) => sum + one.chargers, 0);
  const held = panels.filter(({ size }) => size.managedAmps !== undefined);
  if (load.kind === 'full') return ['All chargers run at full rate at once.'];
  const asked = askedWords(load);
  if (held.length === 0)
    return [`${asked}: the mains carry all chargers at full rate all the same, and nothing is held.`];
  const amps = held.reduce((sum, { size }) => sum + size.managedAmps!, 0);
  const full = panels.reduce((sum, one) => sum + fullLineAmps(tables, one.chargers), 0);
  const floor = load.kind === 'ceiling' && lineShare(chargers) * PILOT_FLOOR_AMPS > load.amps;
  return [
    `${asked}: load management holds ${counted(chargers, 'charger')} to ${amps} A a line in place of ${full.toFixed(0)} A at full rate, and each has ${(amps / lineShare(chargers)).toFixed(1)} A when all charge at once.`,
    ...(floor
      ? [`Their pilots call for no less than ${PILOT_FLOOR_AMPS} A each, more than the ceiling that was asked for.`]
      : []),
    saved > 0
      ? `It saves about $${saved.toFixed(0)} of panels, feeders and branches as they are weighed.`
      : 'It saves nothing here: the mains that it allows are no cheaper.',
  ];
}

function askedWords(load: LoadWish): string {
  switch (load.kind) {
    case 'energy':
      return `For ${load.kwh} kWh in ${load.hours} h for each car`;
    case 'ceiling':
      return `Under a ceiling of ${load.amps} A for the lot`;
    case 'each':
    case 'day':
      return 'So that no car of the charging days gets less than at full rate';
    case 'full':
      return '';
  }
}
