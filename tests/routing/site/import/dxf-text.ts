/** A group of a DXF: its code and its value. */
export type Pair = readonly [code: number, value: string | number];

export const dxfText = (...pairs: readonly Pair[]): string =>
  pairs.map(([code, value]) => `${code}\n${value}\n`).join('');

export interface Parts {
  readonly header?: readonly Pair[];
  readonly tables?: readonly Pair[];
  readonly blocks?: readonly Pair[];
  readonly entities?: readonly Pair[];
  readonly objects?: readonly Pair[];
}

const section = (name: string, pairs: readonly Pair[] | undefined): readonly Pair[] =>
  pairs ? [[0, 'SECTION'], [2, name], ...pairs, [0, 'ENDSEC']] : [];

/** A whole DXF of the sections that are given. */
export const dxfOf = ({ header, tables, blocks, entities, objects }: Parts): string =>
  dxfText(
    ...section('HEADER', header),
    ...section('TABLES', tables),
    ...section('BLOCKS', blocks),
    ...section('ENTITIES', entities),
    ...section('OBJECTS', objects),
    [0, 'EOF'],
  );

export const layer = (name: string, color: number, flags = 0): readonly Pair[] => [
  [0, 'LAYER'],
  [2, name],
  [70, flags],
  [62, color],
];

export const line = (on: string, x0: number, y0: number, x1: number, y1: number): readonly Pair[] => [
  [0, 'LINE'],
  [8, on],
  [10, x0],
  [20, y0],
  [11, x1],
  [21, y1],
];

export const block = (name: string, inside: readonly Pair[], more: readonly Pair[] = []): readonly Pair[] => [
  [0, 'BLOCK'],
  [2, name],
  ...more,
  [10, 0],
  [20, 0],
  ...inside,
  [0, 'ENDBLK'],
];

export const insert = (name: string, on: string, x: number, y: number): readonly Pair[] => [
  [0, 'INSERT'],
  [8, on],
  [2, name],
  [10, x],
  [20, y],
];
