import { direction } from '../../../routing/plane/direction.ts';
import type { Point2 } from '../../../routing/site/site.ts';
import type { ByteText } from '../byte-text.ts';
import { type Tags, tagList, tagText } from './tags.ts';
import { addWipeout } from './wipeout.ts';

/** How an entity is drawn where not as its layer is. */
export interface EntityLook {
  readonly layer: string;
  /** Name of a line type. */
  readonly lineType?: string;
  /** Millimetres. */
  readonly weight?: number;
  /** `#rrggbb`, or a number of the format's own colors. */
  readonly colour?: string | number;
}

/** One line of letters between two points, so that it is as wide whatever the typeface of the reader. */
export interface Letters {
  readonly words: string;
  readonly at: Point2;
  readonly width: number;
  readonly height: number;
  readonly turn: number;
  readonly style: string;
}

/** An attribute of a block: letters, or a value that nobody sees. */
export interface Attribute {
  readonly tag: string;
  readonly value: string;
  readonly letters: Letters | null;
}

/** Writes entities into one space: the model, a sheet, or a block. */
export interface EntityWriter {
  /** All that was written. */
  readonly written: ByteText;
  readonly polyline: (points: readonly Point2[], closed: boolean, look: EntityLook, width?: number) => void;
  readonly polylineInSpace: (points: readonly (readonly number[])[], closed: boolean, look: EntityLook) => void;
  readonly circle: (at: readonly number[], radius: number, look: EntityLook) => void;
  /** A filled circle, as a closed polyline as wide as its radius. */
  readonly dot: (at: Point2, radius: number, look: EntityLook) => void;
  /** Filled, of three or four corners in order. */
  readonly solid: (corners: readonly Point2[], look: EntityLook) => void;
  /** Hides what was written before it, whatever the reader draws on: of corners in order. */
  readonly wipeout: (corners: readonly Point2[], look: EntityLook) => void;
  readonly text: (letters: Letters, look: EntityLook) => void;
  readonly insert: (
    block: string,
    at: readonly number[],
    scale: number,
    look: EntityLook,
    attributes?: readonly Attribute[],
    letters?: EntityLook,
  ) => void;
  /** Anything else: its kind, then what follows the groups that all entities have. */
  readonly other: (kind: string, look: EntityLook, write: (tags: Tags) => void) => string;
}

/** `owner` is the handle of the block record that the entities belong to. */
export function entityWriter(next: () => string, owner: string, isOnPaper: boolean): EntityWriter {
  const tags = tagList();
  const begin = (kind: string, look: EntityLook, of = owner): string => {
    const handle = next();
    tags.add([0, kind], [5, handle], [330, of], [100, 'AcDbEntity']);
    if (isOnPaper) tags.add([67, 1]);
    tags.add([8, look.layer]);
    if (look.lineType !== undefined) tags.add([6, look.lineType]);
    if (typeof look.colour === 'number') tags.add([62, look.colour]);
    if (look.weight !== undefined) tags.add([370, lineWeightOf(look.weight)]);
    if (typeof look.colour === 'string') tags.add([420, Number.parseInt(look.colour.slice(1), 16)]);
    return handle;
  };
  const polyline: EntityWriter['polyline'] = (points, closed, look, width = 0) => {
    begin('LWPOLYLINE', look);
    tags.add([100, 'AcDbPolyline'], [90, points.length], [70, closed ? 1 : 0], [43, width]);
    for (const [x, y] of points) tags.add([10, x], [20, y]);
  };
  return {
    written: tags.text,
    polyline,
    polylineInSpace: (points, closed, look) => {
      const handle = begin('POLYLINE', look);
      tags.add([100, 'AcDb3dPolyline'], [66, 1]);
      tags.point(10, [0, 0, 0]);
      tags.add([70, 8 + (closed ? 1 : 0)]);
      for (const at of points) {
        begin('VERTEX', look, handle);
        tags.add([100, 'AcDbVertex'], [100, 'AcDb3dPolylineVertex']);
        tags.point(10, at);
        tags.add([70, 32]);
      }
      begin('SEQEND', { layer: look.layer }, handle);
    },
    circle: (at, radius, look) => {
      begin('CIRCLE', look);
      tags.add([100, 'AcDbCircle']);
      tags.point(10, at);
      tags.add([40, radius]);
    },
    dot: ([x, y], radius, look) => {
      begin('LWPOLYLINE', look);
      tags.add([100, 'AcDbPolyline'], [90, 2], [70, 1], [43, radius]);
      tags.add([10, x - radius / 2], [20, y], [42, 1], [10, x + radius / 2], [20, y], [42, 1]);
    },
    solid: (corners, look) => {
      const [a, b, c, d = c] = corners as readonly [Point2, Point2, Point2, Point2?];
      begin('SOLID', look);
      tags.add([100, 'AcDbTrace']);
      // The third and fourth corners stand crosswise.
      [a, b, d, c].forEach((at, i) => {
        tags.point(10 + i, at);
      });
    },
    wipeout: (corners, look) => {
      begin('WIPEOUT', look);
      addWipeout(tags, corners);
    },
    text: (letters, look) => {
      begin('TEXT', look);
      addLetters(tags, letters, 'AcDbText');
      tags.add([100, 'AcDbText']);
    },
    insert: (block, at, scale, look, attributes = [], letters = look) => {
      const handle = begin('INSERT', look);
      tags.add([100, 'AcDbBlockReference']);
      if (attributes.length > 0) tags.add([66, 1]);
      tags.add([2, block]);
      tags.point(10, at);
      tags.add([41, scale], [42, scale], [43, scale]);
      if (attributes.length === 0) return;
      for (const { tag, value, letters: shown } of attributes) {
        begin('ATTRIB', letters, handle);
        const hidden: Letters = {
          words: value,
          at: [at[0]!, at[1]!],
          width: 0,
          height: scale * 0.5,
          turn: 0,
          style: 'LETTERS',
        };
        addLetters(tags, shown ?? hidden, 'AcDbText');
        tags.add([100, 'AcDbAttribute'], [280, 0], [2, tag], [70, shown === null ? 1 : 0]);
      }
      begin('SEQEND', { layer: look.layer }, handle);
    },
    other: (kind, look, write) => {
      const handle = begin(kind, look);
      write(tags);
      return handle;
    },
  };
}

const FIT = 5;

/** Fitted between their ends; from the left where they have no width. */
export function addLetters(tags: Tags, { words, at, width, height, turn, style }: Letters, marker: string): void {
  tags.add([100, marker]);
  tags.point(10, at);
  tags.add([40, height], [1, tagText(words)]);
  const upright = ((turn % 360) + 360) % 360;
  if (upright !== 0) tags.add([50, upright]);
  tags.add([7, style]);
  if (width <= 0) return;
  const [ux, uy] = direction(turn);
  tags.add([72, FIT]);
  tags.point(11, [at[0] + width * ux, at[1] + width * uy]);
}

/** Line weights that the format knows, hundredths of a millimetre. */
const WEIGHTS = [0, 5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 53, 60, 70, 80, 90, 100, 106, 120, 140, 158, 200, 211];

/** The nearest line weight that the format knows to one in millimetres. */
export const lineWeightOf = (mm: number): number =>
  WEIGHTS.reduce((best, weight) => (Math.abs(weight - 100 * mm) < Math.abs(best - 100 * mm) ? weight : best));
