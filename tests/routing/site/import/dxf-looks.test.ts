import { describe, expect, it } from 'vitest';
import { drawn } from './as-sent.ts';
import { block, insert, line } from './dxf-text.ts';

describe('looks', () => {
  it('are those of the entity, else of its layer; dashes by the scale of the drawing', () => {
    const { lines } = drawn({
      header: [
        [9, '$LTSCALE'],
        [40, 2],
      ],
      tables: [
        [0, 'LTYPE'],
        [2, 'DASHED'],
        [49, 0.5],
        [49, -0.25],
        [0, 'LAYER'],
        [2, 'L'],
        [62, 3],
        [370, 50],
        [6, 'Dashed'],
      ],
      entities: [
        ...line('L', 0, 0, 1, 1),
        ...line('L', 0, 0, 1, 1),
        [62, 1],
        [370, 100],
        [6, 'CONTINUOUS'],
        ...line('L', 0, 0, 1, 1),
        [420, 0x123456],
      ],
    });
    expect(lines.map(({ look }) => look)).toMatchObject([
      { color: 0x00ff00, weight: 0.5, dash: [1, 0.5] },
      { color: 0xff0000, weight: 1, dash: [] },
      { color: 0x123456, weight: 0.5 },
    ]);
  });
  it('have the width of a polyline, scaled with its block, and the fill of a solid', () => {
    const { lines } = drawn({
      blocks: block('B', [
        [0, 'LWPOLYLINE'],
        [8, '0'],
        [43, 0.5],
        [10, 0],
        [20, 0],
        [10, 5],
        [20, 0],
      ]),
      entities: [
        ...insert('B', 'A', 0, 0),
        [41, 3],
        [42, 3],
        [0, 'SOLID'],
        [8, 'A'],
        [10, 0],
        [20, 0],
        [11, 1],
        [21, 0],
        [12, 0],
        [22, 1],
      ],
    });
    expect(lines.map(({ look }) => [look?.width, look?.filled])).toEqual([
      [1.5, false],
      [0, true],
    ]);
  });
});
