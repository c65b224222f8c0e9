import type { SetOutRow } from '../../../calc/field/set-out-rows.ts';
import { circuitNames } from '../../../calc/supply/panels/circuit-names.ts';
import { awayFromDrawing } from '../../../routing/site/place/as-built.ts';
import { setOutPlace } from '../../../routing/site/place/grid-frame.ts';
import { conflictsOf } from '../../../routing/site/records/registers.ts';
import type { Drop, Site } from '../../../routing/site/site.ts';
import type { BuildFilter } from '../../page-state/build-filter.ts';
import { nearestInch } from '../../words/lengths.ts';
import { setOutWords } from '../../words/setting-out.ts';

/** A drop as the field goes down the list. */
export interface BuildRow {
  readonly id: string;
  readonly stalls: string;
  /** It was checked on some day. */
  readonly done: boolean;
  /** It was built farther from the drawing than the site's rule takes for the same: by so much, in words. */
  readonly off: string | null;
  /** From the gridlines and up from grade. */
  readonly place: string;
  /** Of its chargers, as on the door card. */
  readonly circuits: string;
  /** Two people wrote different things of it. */
  readonly conflict: boolean;
  /** What it is found by, in small letters. */
  readonly names: string;
}

/** A row for each drop, in the order of the site. */
export function buildRows(site: Site): readonly BuildRow[] {
  const { gridlines, units, rules } = site;
  const circuits = circuitNames(site);
  const conflicts = new Set(conflictsOf(site.records).map(({ of }) => of));
  const labels = new Map(site.stalls.map(({ id, label }) => [id, label ?? id]));
  const served = new Map<string, { readonly chargers: string[]; readonly stalls: string[] }>();
  for (const { id, drop, stalls } of site.chargers) {
    const own = served.get(drop) ?? { chargers: [], stalls: [] };
    own.chargers.push(id);
    own.stalls.push(...stalls.map((stall) => labels.get(stall) ?? stall));
    served.set(drop, own);
  }
  const placed = ({ box: [x, y, z] }: Drop): string => {
    const [u, v] = setOutPlace(gridlines, [x, y]);
    return `${setOutWords(gridlines.x, u, units)}, ${setOutWords(gridlines.y, v, units)}, ${nearestInch(z, units)} up`;
  };
  return site.drops.map((drop) => {
    const found = site.asBuilt.get(drop.id);
    const away = awayFromDrawing(drop, found);
    const { chargers = [], stalls = [] } = served.get(drop.id) ?? {};
    const own = chargers.flatMap((charger) => circuits.get(charger) ?? []);
    return {
      id: drop.id,
      stalls: stalls.join(', '),
      done: found?.checkedOn !== undefined,
      off: away > rules.builtTolerance ? nearestInch(away, units) : null,
      place: placed(drop),
      circuits: own.join(', '),
      conflict: conflicts.has(drop.id),
      names: [drop.id, ...chargers, ...stalls, ...own].join(' ').toLowerCase(),
    };
  });
}

/** Whether a row is shown. Every word that is typed must be found in one of its names. */
export const isShown = ({ done, off, names }: BuildRow, { find, notDone, offDrawing }: BuildFilter): boolean =>
  (!notDone || !done) &&
  (!offDrawing || off !== null) &&
  find
    .toLowerCase()
    .split(/\s+/)
    .every((word) => names.includes(word));

/** The next row that is shown after that of a drop, from the top again at the end; none where no other is. */
export function nextRow(rows: readonly BuildRow[], filter: BuildFilter, id: string): BuildRow | null {
  const at = rows.findIndex((row) => row.id === id);
  const after = [...rows.slice(at + 1), ...rows.slice(0, Math.max(0, at))];
  return after.find((row) => isShown(row, filter)) ?? null;
}

/** The drop after a drop along the row that its box is set out in; the first of it after the last, none where it is alone. */
export function nextInRow(rows: readonly SetOutRow[], id: string): string | null {
  for (const { marks } of rows) {
    const at = marks.findIndex(({ point }) => point.of === id && point.part === 'box');
    if (at >= 0) return marks[(at + 1) % marks.length]!.point.of;
  }
  return null;
}
