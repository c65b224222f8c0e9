import type * as v from 'valibot';
import type { Point2, Point3 } from '../../plane/point.ts';
import type { Motion } from '../place/motion.ts';
import type { ElementList } from './kinds.ts';

export type DeepReadonly<T> = T extends (infer _)[]
  ? { readonly [K in keyof T]: DeepReadonly<T[K]> }
  : T extends object
    ? { readonly [K in keyof T]: DeepReadonly<T[K]> }
    : T;

/** What stands in the file by a schema. */
export type Of<S extends v.GenericSchema> = DeepReadonly<v.InferOutput<S>>;

/** A handle of an element that is not the element as a whole: `box`, `entry`, or one of several by its `index`. */
export interface Part {
  readonly kind: string;
  readonly index?: number;
}

export const samePart = (a: Part, b: Part): boolean => a.kind === b.kind && a.index === b.index;

/** A handle and where it is; without an elevation where the element has none. */
export interface PartAt {
  readonly part: Part;
  readonly at: Point2 | Point3;
}

/** The handles of an element that can be moved, and taken away, by themselves. */
export interface Parts<Record> {
  readonly of: (element: Record) => readonly PartAt[];
  readonly moved: (element: Record, part: Part, to: (at: Point3) => Point3) => Record;
  /** What is left without some of them; null where the element goes with them. */
  readonly without: (element: Record, parts: readonly Part[]) => Record | null;
}

/**
 * All that the site file and its edits know of one kind of element. `Record` is what stands in the file, `Element` what
 * the engine reads it as.
 */
export interface Kind<S extends v.GenericSchema, Element = Of<S>> {
  readonly schema: S;
  /** In the trade's words, for sentences. */
  readonly one: string;
  readonly many: string;
  readonly anyOne: string;
  /** Fields that name elements of other lists. */
  readonly refers?: Readonly<{ [field: string]: ElementList }>;
  /** What else than its id it is known by. */
  readonly alsoCalled?: (element: Of<S>) => string | undefined;
  /** As the engine reads it, its lengths being in feet already; as it stands in the file where absent. */
  readonly read?: (element: Of<S>) => Element;
}

/** What the published JSON Schema says of a kind that its schema itself does not. */
export interface KindDocs<S extends v.GenericSchema> {
  /** What its list holds. */
  readonly says: string;
  /** What fields mean whose name does not say it, by path; `*` stands for each of a list. */
  readonly fields?: Readonly<Record<string, string>>;
  /** Elements of one site that have every field between them. */
  readonly examples: readonly Of<S>[];
}

/** A kind whose elements have a place of their own. */
export interface PlacedKind<S extends v.GenericSchema> extends Kind<S> {
  /** The element after a motion, in the units of the motion. */
  readonly moved: (element: Of<S>, motion: Motion) => Of<S>;
  /** The points in plan that it lies between; of an outline its corners. */
  readonly points: (element: Of<S>) => readonly Point2[];
  /** The point that comes to lie on the grid when it is moved; the first of its points where absent. */
  readonly anchor?: (element: Of<S>) => Point2;
  /** What it is on a map: its first point, the line through its points, or the outline of which they are the corners. */
  readonly shape: 'point' | 'line' | 'ring';
  readonly parts?: Parts<Of<S>>;
  /** It says something of the drawing: nothing is proposed by it. */
  readonly remark?: true;
  /** What a revision changes of it has no cloud of its own. */
  readonly unclouded?: true;
}

/** A place in the plan as a motion of places in space moves it. */
export function flat(to: (at: Point3) => Point3, [x, y]: Point2): Point2 {
  const [mx, my] = to([x, y, 0]);
  return [mx, my];
}

/** An element without some vertices of its path or outline; null where fewer than `least` are left. */
export function withoutVertices<Field extends string, T extends { readonly [F in Field]: readonly unknown[] }>(
  element: T,
  field: Field,
  parts: readonly Part[],
  least: number,
): T | null {
  const gone = new Set(parts.map(({ index }) => index));
  const left = element[field].filter((_, index) => !gone.has(index));
  return left.length < least ? null : { ...element, [field]: left };
}
