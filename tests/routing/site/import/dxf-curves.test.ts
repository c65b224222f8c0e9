import { describe, expect, it } from 'vitest';
import { drawn } from './as-sent.ts';
import { line, type Pair } from './dxf-text.ts';

describe('curves', () => {
  const header: readonly Pair[] = [
    [9, '$INSUNITS'],
    [70, 2],
  ];
  it('of any radius lie within a hundredth of a foot', () => {
    for (const radius of [3, 500, 1000, 5000]) {
      const [arc] = drawn({
        header,
        entities: [
          [0, 'ARC'],
          [8, 'A'],
          [10, 0],
          [20, 0],
          [40, radius],
          [50, 0],
          [51, 90],
        ],
      }).lines;
      const off = arc!.points
        .slice(1)
        .map(([x, y], i) => radius - Math.hypot((x + arc!.points[i]![0]) / 2, (y + arc!.points[i]![1]) / 2));
      expect(Math.max(...off)).toBeLessThan(0.0101);
    }
  });
  it('of an ellipse that is seen from below run the other way, and their ratio may be over one', () => {
    const [below] = drawn({
      entities: [
        [0, 'ELLIPSE'],
        [8, 'A'],
        [10, 0],
        [20, 0],
        [11, 10],
        [21, 0],
        [40, 0.5],
        [41, 0],
        [42, Math.PI / 2],
        [210, 0],
        [220, 0],
        [230, -1],
      ],
    }).lines;
    expect(below!.points.at(-1)!.map((side) => Math.round(side * 1e9) / 1e9)).toEqual([0, -5]);
    const [wide] = drawn({
      entities: [
        [0, 'ELLIPSE'],
        [8, 'A'],
        [10, 0],
        [20, 0],
        [11, 10],
        [21, 0],
        [40, 1.0095],
        [41, 0],
        [42, Math.PI / 2],
      ],
    }).lines;
    expect(wide!.points.at(-1)![1]).toBeCloseTo(10.095, 9);
  });
});

describe('units', () => {
  const unit = (...header: readonly Pair[]) => {
    const { feetPerUnit, unitSays } = drawn({ header, entities: line('A', 0, 0, 1, 1) });
    return [feetPerUnit, unitSays];
  };
  it('are told always, with why', () => {
    expect(unit([9, '$INSUNITS'], [70, 6])).toEqual([1 / 0.3048, 'in meters, by its header']);
    expect(unit([9, '$INSUNITS'], [70, 0])).toEqual([null, 'it does not say its units']);
    expect(unit([9, '$MEASUREMENT'], [70, 1])).toEqual([null, 'it does not say its units, only that they are metric']);
  });
  it('are inches where lengths are shown in feet and inches, whatever a template left in the header', () => {
    expect(unit([9, '$INSUNITS'], [70, 4], [9, '$LUNITS'], [70, 4])).toEqual([
      1 / 12,
      'in inches, for it shows its lengths in feet and inches, though its header also names millimeters',
    ]);
  });
});
