import { kept } from '../../../routing/kept/kept.ts';
import { boxOf } from '../../../routing/plane/box.ts';
import { type Rectangle, rectangleAt } from '../../../routing/plane/rectangle.ts';
import type { Column } from '../../../routing/site/site.ts';
import { drawColumnEdges, drawColumns } from '../pictures/steel/structure.ts';
import type { BoardKind, ElementMark } from './kind.ts';

export interface ColumnMark extends ElementMark<'columns'> {
  readonly column: Column;
  readonly corners: Rectangle;
}

export const columns: BoardKind<'columns', ColumnMark> = {
  mark: kept((column: Column): ColumnMark => {
    const corners = rectangleAt(column.at, column.size, column.rotation ?? 0);
    return { list: 'columns', id: column.id, column, corners, ...boxOf(corners) };
  }),
  keptClear: true,
  pictures: [
    { name: 'columns', over: 130, from: 0.7, draw: drawColumns },
    { name: 'column edges', over: 160, on: 'base', from: 0.7, draw: drawColumnEdges },
  ],
  hold: { rank: 30, tour: 50 },
  aims: ({ id, column }, { end }) => end(column.at, `center of ${id}`),
};
