import type { DrawnLine } from '../../routing/site/import/imported.ts';
import { type Turned, type TurnKind, turnedInto } from '../../routing/site/import/turn-into.ts';
import { newIds } from '../../routing/site/new-id.ts';
import type { SiteFile, Underlay } from '../../routing/site/site.ts';
import type { Edit } from '../document/change/edit.ts';
import { type Additions, addAll } from '../document/edits/add.ts';
import { inWords } from '../document/edits/in-words.ts';
import { type PackedLines, unpackedLines } from './packed-lines.ts';
import { onSite } from './placement.ts';

/** How the lines of some layers are turned. */
export interface TurnChoice {
  readonly kind: TurnKind;
  readonly layers: ReadonlySet<string>;
  /** Of raceways, feet. */
  readonly elevation: number;
  /** Stalls head the other way than they are taken to. */
  readonly flip: boolean;
}

const PREFIX: Readonly<Record<TurnKind, string>> = {
  stalls: 'S',
  columns: 'K',
  keepouts: 'KO',
  aisles: 'A',
  raceways: 'R',
};

/** What the chosen layers of an underlay come to where it lies. */
export function turnedFrom(
  underlay: Underlay,
  packed: PackedLines,
  { kind, layers, elevation, flip }: TurnChoice,
): Turned {
  const lines = unpackedLines(packed, layers).map(
    (line): DrawnLine => ({ ...line, points: line.points.map((point) => onSite(underlay, point)) }),
  );
  return turnedInto(kind, lines, elevation, flip);
}

/** Adds them as one edit: "Turn 24 lines of the underlay into 24 stalls". */
export function turnEdit(file: SiteFile, kind: TurnKind, turned: Turned): Edit {
  const bare: readonly object[] = turned[kind];
  const ids = newIds(file, PREFIX[kind], bare.length);
  const additions = { [kind]: bare.map((element, i) => ({ id: ids[i]!, ...element })) } as Additions;
  const words = inWords(ids.map((id) => ({ list: kind, id })));
  return addAll(file, `Turn lines of the underlay into ${words}`, additions);
}
