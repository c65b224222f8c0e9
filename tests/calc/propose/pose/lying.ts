import { steadyNumbers } from '../../../../routing/propose/shared/steady-numbers.ts';
import { ELEMENT_LISTS, KINDS, placedKind } from '../../../../routing/site/kinds/kinds.ts';
import type { Motion } from '../../../../routing/site/place/motion.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';

type Row = { readonly id: string; readonly [field: string]: unknown };
type Lists = { readonly [list: string]: readonly Row[] };

/** Six decimals, as the page turns things. */
const tidy = (value: number): number => Math.round(value * 1e6) / 1e6;

/** A lot turned by some degrees, then mirrored in the y axis if so, then moved. */
export function lying(file: SiteFile, degrees: number, mirrors: boolean): SiteFile {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const side = mirrors ? -1 : 1;
  const motion: Motion = {
    point: ([x, y]) => [tidy(side * (c * x - s * y) + 131.25), tidy(s * x + c * y - 77.5)],
    direction: (was) => (720 + (mirrors ? 180 - was - degrees : was + degrees)) % 360,
    lift: 0,
    mirrors,
  };
  const lists = Object.fromEntries(
    ELEMENT_LISTS.flatMap((list) => {
      const kind = placedKind(list);
      const rows = file[list] as readonly Row[] | undefined;
      return rows === undefined || kind === null ? [] : [[list, rows.map((row) => kind.moved(row as never, motion))]];
    }),
  );
  return { ...file, ...lists } as SiteFile;
}

/** A lot with its elements in another order and with other names. */
export function renumbered(file: SiteFile, seed: number): SiteFile {
  const random = steadyNumbers(seed);
  const names = new Map<string, string>();
  const lists: { [list: string]: Row[] } = {};
  for (const list of ELEMENT_LISTS) {
    const rows = file[list] as readonly Row[] | undefined;
    if (rows === undefined) continue;
    const shuffled = rows.map((row) => ({ row, at: random() })).sort((a, b) => a.at - b.at);
    lists[list] = shuffled.map(({ row }) => row);
    for (const { row, at } of shuffled) names.set(row.id, `${list.slice(0, 2)}.${Math.floor(at * 1e9)}`);
  }
  const named = (id: unknown): unknown => (Array.isArray(id) ? id.map(named) : (names.get(id as string) ?? id));
  const renamed: Lists = Object.fromEntries(
    Object.entries(lists).map(([list, rows]) => {
      const { refers = {} } = KINDS[list as keyof typeof KINDS] as {
        readonly refers?: Readonly<Record<string, string>>;
      };
      const fields = ['id', ...Object.keys(refers)];
      return [
        list,
        rows.map((row) => ({
          ...row,
          ...Object.fromEntries(fields.flatMap((field) => (field in row ? [[field, named(row[field])]] : []))),
        })) as unknown as readonly Row[],
      ];
    }),
  );
  return { ...file, ...renamed } as SiteFile;
}
