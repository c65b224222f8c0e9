import { LAYERS } from '../drawing/layers.ts';
import type { SheetMark, TextMark } from '../lettered/mark.ts';
import { roundWords } from '../lettered/round-words.ts';
import { BLACK, GREY, WHITE } from '../pdf/kit/ink.ts';
import { addDimension, type DimStyle, type WrittenBlock } from './dimension-entities.ts';
import type { EntityLook, EntityWriter, Letters } from './entity-writer.ts';

/** What marks are written with. */
export interface MarkRoom {
  readonly layerOf: (mark: SheetMark) => string;
  readonly style: DimStyle;
  readonly next: () => string;
  readonly isOnPaper: boolean;
  /** Takes the block of a dimension; names it. */
  readonly block: (write: (name: string) => WrittenBlock) => void;
  /** Name of a line type for dashes in millimetres of the sheet. */
  readonly lineType: (dash: readonly number[]) => string;
}

/** Writes marks of a sheet as entities, lines as heavy and as black as they are printed. */
export function addMarks(writer: EntityWriter, marks: readonly SheetMark[], room: MarkRoom): void {
  for (const mark of marks) {
    const layer = room.layerOf(mark);
    switch (mark.kind) {
      case 'line': {
        const { ink } = mark;
        const dash = ink.dash === undefined ? 'Continuous' : room.lineType(ink.dash);
        writer.polyline(mark.points, mark.closed, {
          ...lookOf(layer, mark, ink.colour),
          weight: ink.weight,
          lineType: dash,
        });
        break;
      }
      case 'fill':
        if (mark.colour === WHITE) writer.wipeout(mark.points, { layer });
        else if (mark.points.length <= 4) writer.solid(mark.points, lookOf(layer, mark, mark.colour));
        break;
      case 'circle':
        if (mark.fill !== undefined) writer.dot(mark.at, mark.radius, lookOf(layer, mark, mark.fill));
        if (mark.ink !== null)
          writer.circle(mark.at, mark.radius, {
            ...lookOf(layer, mark, mark.ink.colour),
            weight: mark.ink.weight,
            lineType: 'Continuous',
          });
        break;
      case 'text':
        writer.text(lettersOf(mark), lookOf(layer, mark, mark.colour));
        break;
      case 'dimension':
        // Its own line runs under its figure; what else lies there does not.
        if (mark.figure) writer.wipeout(roundWords(mark.figure, 0.15 * mark.figure.height), { layer });
        room.block((name) => addDimension(writer, mark, { layer, colour: 7 }, { ...room, name }));
    }
  }
}

export const lettersOf = ({ words, at, width, height, turn, weight }: TextMark): Letters => ({
  words,
  at,
  width,
  height,
  turn,
  style: weight === 'bold' ? 'LETTERS-BOLD' : 'LETTERS',
});

/** Black and grey are the reader's own, for many draw on black; what is colored keeps its color. */
function lookOf(layer: string, mark: SheetMark, colour: string): EntityLook {
  if (mark.layer !== null && colour === LAYERS[mark.layer].colour) return { layer };
  if (colour === BLACK) return { layer, colour: 7 };
  if (colour === GREY) return { layer, colour: 8 };
  return { layer, colour };
}
