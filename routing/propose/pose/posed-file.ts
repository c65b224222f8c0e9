import { twiceAreaOf } from '../../plane/area.ts';
import { KINDS, PLACED_LISTS, placedKind } from '../../site/kinds/kinds.ts';
import { fromFeet } from '../../site/numbers/units.ts';
import type { Motion } from '../../site/place/motion.ts';
import type { Inlet, Point2, SiteFile, Vehicle } from '../../site/site.ts';
import { BUILT_IN_VEHICLES } from '../../site/vehicles.ts';

/** Elements without the name that they happen to have. */
type Row = { readonly id: string; readonly [field: string]: unknown };

/** What is proposed for a lot depends on what stands where, not on the names or the order in which it was drawn. */
const NAMES: readonly string[] = ['id', 'label'];

export interface Posed {
  readonly file: SiteFile;
  /** All that proposals go by, the same for lots that are the same but for names and order. */
  readonly key: string;
}

/**
 * A lot after a motion, its elements in the order of their places, row by row: outlines from their first corner, members
 * from their first end, and vehicles with their inlets on the other side where the motion mirrors.
 */
export function posedFile(file: SiteFile, motion: Motion): Posed {
  const lists: { [list: string]: readonly Row[] } = {};
  const keys: string[] = [];
  const place = new Map<string, number>();
  const put = (list: string, rows: readonly Ranked[]): void => {
    const ordered = [...rows].sort(byPlace);
    ordered.forEach(({ row: { id } }, i) => {
      place.set(id, i);
    });
    lists[list] = ordered.map(({ row }) => row);
    keys.push(list, ...ordered.map(({ key }) => key));
  };
  for (const list of PLACED_LISTS) {
    const rows = file[list] as readonly Row[] | undefined;
    const kind = placedKind(list)!;
    // Remarks stay as they are.
    if (rows === undefined || kind.remark) continue;
    put(
      list,
      rows.map((one) => {
        const row = tidied(kind.moved(one as never, motion) as unknown as Row);
        return { row, at: middle(kind.points(row as never)), key: keyOf(row, NAMES) };
      }),
    );
  }
  // What has no place of its own stands in the order of what it belongs to.
  for (const list of ['feeders', 'loads', 'chargers'] as const) {
    const rows = file[list] as readonly Row[] | undefined;
    if (rows === undefined) continue;
    const refers = Object.keys(KINDS[list].refers ?? {});
    const placesOf = (row: Row): number[] =>
      refers.flatMap((field) => [row[field]].flat().map((id) => place.get(id as string) ?? -1));
    put(
      list,
      rows.map((row) => {
        const own = placesOf(row);
        return { row, at: [own[1] ?? 0, own[0] ?? 0], key: `${own.join(' ')} ${keyOf(row, [...NAMES, ...refers])}` };
      }),
    );
  }
  return {
    file: {
      ...file,
      ...lists,
      ...(file.gridlines && { gridlines: gridlinesIn(file.gridlines, motion) }),
      ...(motion.mirrors && { vehicles: mirroredVehicles(file) }),
    },
    key: keys.join('\n'),
  };
}

interface Ranked {
  readonly row: Row;
  readonly at: Point2;
  readonly key: string;
}

/** Of the units of the file: nearer than one in so many, places are on one line. */
const LINE = 100;

const byPlace = (a: Ranked, b: Ranked): number =>
  Math.round(LINE * a.at[1]) - Math.round(LINE * b.at[1]) ||
  Math.round(LINE * a.at[0]) - Math.round(LINE * b.at[0]) ||
  (a.key < b.key ? -1 : a.key > b.key ? 1 : 0);

const keyOf = (row: Row, without: readonly string[]): string =>
  JSON.stringify(
    Object.entries(row)
      .filter(([field]) => !without.includes(field))
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  );

function middle(points: readonly Point2[]): Point2 {
  const sum = points.reduce(([x, y], [px, py]): Point2 => [x + px, y + py], [0, 0]);
  return [sum[0] / points.length, sum[1] / points.length];
}

/** What says the same in several ways in one of them. */
function tidied(row: Row): Row {
  const { rotation, size, outline, from, to } = row as {
    readonly rotation?: number;
    readonly size?: readonly number[];
    readonly outline?: readonly Point2[];
    readonly from?: Point2;
    readonly to?: Point2;
  };
  // A column is the same the other way round.
  const turn = rotation === undefined ? 0 : size?.length === 2 ? rotation % 180 : rotation;
  const { rotation: _, ...rest } = row;
  const isBack = Array.isArray(from) && Array.isArray(to) && before(to as unknown as Point2, from as unknown as Point2);
  return {
    ...(rest as Row),
    ...(turn !== 0 && { rotation: turn }),
    ...(outline && { outline: fromFirst(outline) }),
    ...(isBack && { from: to, to: from }),
  };
}

const before = ([ax, ay]: Point2, [bx, by]: Point2): boolean => ay < by || (ay === by && ax < bx);

/** Corners counter-clockwise from the first of them. */
function fromFirst(outline: readonly Point2[]): readonly Point2[] {
  const round = twiceAreaOf(outline) < 0 ? [...outline].reverse() : outline;
  const first = round.reduce((best, at, i) => (before(at, round[best]!) ? i : best), 0);
  return [...round.slice(first), ...round.slice(0, first)];
}

function gridlinesIn(
  { x = [], y = [], rotation = 0, origin = [0, 0] }: NonNullable<SiteFile['gridlines']>,
  motion: Motion,
): NonNullable<SiteFile['gridlines']> {
  const across = motion.mirrors ? y.map(({ label, at }) => ({ label, at: 0 - at })) : y;
  return { x, y: across, rotation: motion.direction(rotation), origin: motion.point(origin) };
}

const OTHER: Readonly<Partial<Record<Inlet['side'], Inlet['side']>>> = { left: 'right', right: 'left' };

/** Every class of vehicle with its inlets on the other side, in the units of the file. */
function mirroredVehicles({ units, vehicles = {} }: SiteFile): NonNullable<SiteFile['vehicles']> {
  const inFile = (feet: number): number => fromFeet(feet, units);
  const builtIn = [...BUILT_IN_VEHICLES].map(([name, { length, width, height, inlets }]): [string, Vehicle] => [
    name,
    {
      length: inFile(length),
      width: inFile(width),
      height: inFile(height),
      inlets: inlets.map((one) => ({ ...one, height: inFile(one.height) })),
    },
  ]);
  return Object.fromEntries(
    [...builtIn, ...Object.entries(vehicles)].map(([name, one]) => [
      name,
      { ...one, inlets: one.inlets.map((inlet) => ({ ...inlet, side: OTHER[inlet.side] ?? inlet.side })) },
    ]),
  );
}
