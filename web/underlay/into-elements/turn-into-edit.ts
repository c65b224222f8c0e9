import type { ImportedLine } from '../../../routing/site/import/imported.ts';
import { type Turned, type TurnKind, turnedInto } from '../../../routing/site/import/turn-into.ts';
import { newIds } from '../../../routing/site/new-id.ts';
import type { SiteFile, Underlay } from '../../../routing/site/site.ts';
import type { Edit } from '../../document/change/edit.ts';
import { type Additions, addAll } from '../../document/edits/add.ts';
import { inWords } from '../../document/edits/in-words.ts';
import { setGridlines } from '../../document/edits/set.ts';
import type { UnderlayPicture } from '../painting/picture.ts';
import { onSite } from '../placing/placement.ts';
import { unpackedLines } from '../reading/packed-lines.ts';

/** How the lines of some layers are turned. */
export interface TurnChoice {
  readonly kind: TurnKind;
  readonly layers: ReadonlySet<string>;
  /** Of raceways, feet. */
  readonly elevation: number;
  /** Stalls head the other way than they are taken to. */
  readonly flip: boolean;
  /** Lines that an earlier turn left over, on the site: these alone are turned. */
  readonly left?: readonly ImportedLine[] | null;
}

const PREFIX: Readonly<Record<Exclude<TurnKind, 'gridlines'>, string>> = {
  stalls: 'S',
  columns: 'K',
  keepouts: 'KO',
  aisles: 'A',
  raceways: 'R',
};

/** What the chosen layers of an underlay come to where it lies. */
export function turnedFrom(
  underlay: Underlay,
  { lines: packed, words = [], rounding = 0 }: Pick<UnderlayPicture, 'lines' | 'words' | 'rounding'>,
  { kind, layers, elevation, flip, left }: TurnChoice,
): Turned {
  const { scale, rotation = 0 } = underlay;
  const drawn = packed ? unpackedLines(packed, layers) : [];
  const lines =
    left ??
    drawn.map((line): ImportedLine => ({ ...line, points: line.points.map((point) => onSite(underlay, point)) }));
  const placed = words.map((one) => ({
    ...one,
    at: onSite(underlay, one.at),
    height: one.height * scale,
    turn: one.turn + rotation,
  }));
  return turnedInto(kind, lines, elevation, flip, { words: placed, rounding: rounding * scale });
}

/** How many things lines were turned into. */
export const turnedCount = (turned: Turned, kind: TurnKind): number =>
  kind === 'gridlines' ? (turned.gridlines?.x.length ?? 0) + (turned.gridlines?.y.length ?? 0) : turned[kind].length;

/** Adds them as one edit: "Turn lines of the underlay into 24 stalls". Gridlines take the place of those there are. */
export function turnEdit(file: SiteFile, kind: TurnKind, turned: Turned): Edit {
  if (kind === 'gridlines')
    return { ...setGridlines(file, turned.gridlines), name: 'Turn lines of the underlay into gridlines' };
  const bare: readonly object[] = turned[kind];
  const ids = newIds(file, PREFIX[kind], bare.length);
  const additions = { [kind]: bare.map((element, i) => ({ id: ids[i]!, ...element })) } as Additions;
  const words = inWords(ids.map((id) => ({ list: kind, id })));
  return addAll(file, `Turn lines of the underlay into ${words}`, additions);
}
