import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boxVolume } from '../../../calc/branches/boxes/box-volume.ts';
import { pullBox } from '../../../calc/branches/boxes/pull-box.ts';
import { expansion, fittingLength } from '../../../calc/branches/expansion.ts';
import { fill } from '../../../calc/branches/home-runs/fill.ts';
import { jamRatio } from '../../../calc/branches/pulls/jam-ratio.ts';
import { type PullSegment, pulling } from '../../../calc/branches/pulls/pulling.ts';
import { CALC_KINDS } from '../../../calc/cli/kinds/index.ts';
import { findConductorArea } from '../../../calc/tables/conductor-of.ts';
import { NEC_2023 as nec } from '../../../calc/tables/nec-2023/nec-2023.ts';
import { tradeSizes } from '../../../calc/tables/raceway-of.ts';
import { explained, SILENT } from '../../../calc/words/explain.ts';

describe('fill', () => {
  const lists = fc.array(
    fc.record({
      size: fc.constantFrom('12', '10', '8', '6', '2', '1/0'),
      insulation: fc.constantFrom('THWN-2', 'XHHW-2', 'bare'),
      count: fc.integer({ min: 1, max: 6 }),
    }),
    { minLength: 1, maxLength: 4 },
  );
  const methods = fc.constantFrom('EMT' as const, 'RMC' as const, 'IMC' as const, 'PVC40' as const, 'LFMC' as const);

  test('grows with every conductor', () => {
    fc.assert(
      fc.property(methods, lists, lists, (method, some, more) => {
        const at = (conductors: typeof some) => fill(nec, { method, conductors, tradeSize: '2' });
        expect(at([...some, ...more]).fillPercent).toBeGreaterThan(at(some).fillPercent);
        expect(at([...some, ...more]).conductorArea).toBeCloseTo(at(some).conductorArea + at(more).conductorArea, 10);
      }),
    );
  });
  test('falls with trade size', () => {
    fc.assert(
      fc.property(methods, lists, (method, conductors) => {
        const fills = tradeSizes(nec, method).map(
          (tradeSize) => fill(nec, { method, conductors, tradeSize }).fillPercent,
        );
        expect(fills).toEqual(fills.toSorted((a, b) => b - a));
      }),
    );
  });
  test('chooses the smallest raceway that fits', () => {
    fc.assert(
      fc.property(methods, lists, (method, conductors) => {
        const chosen = fill(nec, { method, conductors });
        const fitting = tradeSizes(nec, method).filter((tradeSize) => fill(nec, { method, conductors, tradeSize }).ok);
        expect(chosen.ok).toBe(fitting.length > 0);
        expect(chosen.tradeSize).toBe(fitting[0] ?? tradeSizes(nec, method).at(-1));
      }),
    );
  });
  test('hand-worked: three 32 A circuits of 8 AWG THWN-2 with a 10 AWG ground are 0.2407 in², 27.9% of 1 EMT', () => {
    const conductors = [
      { size: '8', insulation: 'THWN-2', count: 6 },
      { size: '10', insulation: 'THWN-2', count: 1 },
    ];
    const result = fill(nec, { method: 'EMT', conductors });
    expect(result.conductorArea).toBeCloseTo(0.2407, 10);
    expect(result.fillPercent).toBeCloseTo((100 * 0.2407) / 0.864, 10);
    expect(result).toMatchObject({ tradeSize: '1', limitPercent: 40, ok: true });
  });
  test('is limited by the number of conductors, and to 60% in a nipple', () => {
    const of = (count: number, nipple?: boolean) =>
      fill(nec, { method: 'EMT', conductors: [{ size: '8', insulation: 'THWN-2', count }], nipple }).limitPercent;
    expect([of(1), of(2), of(3), of(7)]).toEqual([53, 31, 40, 40]);
    expect(of(2, true)).toBe(60);
  });
  test('says so where no raceway of the method is large enough', () => {
    const conductors = [{ size: '1000', insulation: 'THWN-2', count: 9 }];
    expect(fill(nec, { method: 'EMT', conductors })).toMatchObject({ tradeSize: '4', ok: false });
  });
  test('of a tray is not answered', () => {
    expect(() => fill(nec, { method: 'tray', conductors: [{ size: '8', insulation: 'THWN-2', count: 1 }] })).toThrow(
      RangeError,
    );
  });
});

test('three 2 AWG THHN in 1-1/4 RMC are past the band in which they jam, three 4 AWG in 1 IMC past it too', () => {
  expect(jamRatio(nec, { method: 'RMC', tradeSize: '1-1/4' }, { size: '2', insulation: 'THHN' }).likely).toBe(false);
  // 1.049 / 0.352 = 2.98: within 2.8 to 3.2.
  expect(jamRatio(nec, { method: 'EMT', tradeSize: '1' }, { size: '3', insulation: 'THHN' })).toEqual({
    ratio: expect.closeTo(2.98, 2),
    likely: true,
  });
});

describe('box volume', () => {
  test('counts a grounding allowance for up to four and a quarter for each more: 314.16(B)(5)', () => {
    const of = (count: number) =>
      boxVolume(nec, { conductors: [{ size: '12', count: 2 }], groundings: [{ size: '12', count }] }).volume - 4.5;
    expect([0, 1, 4, 5, 8].map(of)).toEqual([0, 2.25, 2.25, 2.8125, 4.5]);
  });
  test('counts a clamp by the largest conductor and a yoke twice by its own', () => {
    const conductors = [
      { size: '8', count: 2 },
      { size: '14', count: 2 },
    ];
    expect(boxVolume(nec, { conductors }).volume).toBe(10);
    expect(boxVolume(nec, { conductors, clamps: true }).volume).toBe(13);
    expect(boxVolume(nec, { conductors, devices: [{ size: '14', count: 1 }] }).volume).toBe(14);
  });
  test('of a drop with two circuits of 8 AWG spliced and two grounds is 4 x 3 + 2.5 in³', () => {
    const conductors = [{ size: '8', count: 4 }];
    expect(boxVolume(nec, { conductors, groundings: [{ size: '10', count: 2 }] }).volume).toBe(14.5);
  });
  test('is not answered for 4 AWG and larger', () => {
    expect(() => boxVolume(nec, { conductors: [{ size: '4', count: 1 }] })).toThrow(RangeError);
  });
});

describe('pull box', () => {
  test('takes the greatest of straight pull and rows', () => {
    expect(pullBox(nec, { straight: ['2'], rows: [['3'], ['1', '1', '1']] }).length).toBe(18);
    expect(pullBox(nec, { straight: ['3'], rows: [['2', '1-1/4']] }).length).toBe(24);
    expect(pullBox(nec, { rows: [['2', '2', '1-1/2']] }).length).toBe(15.5);
  });
  test('without raceways has no length', () => expect(pullBox(nec, {}).length).toBe(0));
});

describe('expansion', () => {
  test('of 100 ft of PVC over 100 °F is 4.056 in., of steel 0.78 in.', () => {
    const of = (material: 'PVC' | 'steel') =>
      expansion(nec, { material, length: 100, temperatureRangeC: 100 / 1.8 }).change;
    expect(of('PVC')).toBeCloseTo(4.056, 10);
    expect(of('steel')).toBeCloseTo(0.78, 10);
  });
  test('reaches the quarter inch at the length for a fitting', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('PVC' as const, 'steel' as const, 'aluminum' as const),
        fc.double({ min: 1, max: 80, noNaN: true }),
        (material, temperatureRangeC) => {
          const length = fittingLength(nec, material, temperatureRangeC);
          expect(expansion(nec, { material, length, temperatureRangeC }).change).toBeCloseTo(0.25, 10);
        },
      ),
    );
  });
  test('needs no fitting at one temperature', () => expect(fittingLength(nec, 'PVC', 0)).toBe(Infinity));
});

describe('pulling', () => {
  const segments = fc.array(
    fc.oneof(
      fc.record({ kind: fc.constant('straight' as const), length: fc.double({ min: 0, max: 300, noNaN: true }) }),
      fc.record({
        kind: fc.constant('bend' as const),
        angle: fc.double({ min: 0, max: 90, noNaN: true }),
        radius: fc.double({ min: 0.5, max: 5, noNaN: true }),
      }),
    ),
    { minLength: 1, maxLength: 8 },
  ) as fc.Arbitrary<PullSegment[]>;
  const pull = { weightPerFoot: 1.5, friction: 0.4, tensionIn: 20 };

  test('never eases on the level, and pulls harder with more friction', () => {
    fc.assert(
      fc.property(segments, (route) => {
        const { tension } = pulling({ ...pull, segments: route });
        expect([20, ...tension]).toEqual([20, ...tension].sort((a, b) => a - b));
        const rough = pulling({ ...pull, friction: 0.5, segments: route });
        route.forEach((_, at) => {
          expect(rough.tension[at]).toBeGreaterThanOrEqual(tension[at] ?? Number.NaN);
        });
      }),
    );
  });
  test('presses only in bends, with tension over radius', () => {
    const { tension, sidewall } = pulling({
      ...pull,
      segments: [
        { kind: 'straight', length: 100 },
        { kind: 'bend', angle: 90, radius: 2 },
      ],
    });
    expect(tension[0]).toBeCloseTo(80, 10);
    expect(tension[1]).toBeCloseTo(80 * Math.exp(0.4 * (Math.PI / 2)), 10);
    expect(sidewall[0]).toBe(0);
    expect(sidewall[1]).toBeCloseTo((tension[1] ?? 0) / 2, 10);
  });
  test('lifts the weight up a riser and is helped down one', () => {
    const of = (slope: number) => pulling({ ...pull, segments: [{ kind: 'straight', length: 10, slope }] }).tension[0];
    expect(of(90)).toBeCloseTo(20 + 15, 10);
    expect(of(-90)).toBeCloseTo(20 - 15, 10);
    expect(of(30)).toBeCloseTo(20 + 15 * (0.4 * Math.cos(Math.PI / 6) + 0.5), 10);
  });
  test('never pushes', () => {
    const down = { kind: 'straight', length: 500, slope: -90 } as const;
    expect(pulling({ ...pull, segments: [down] }).tension[0]).toBe(0);
  });
});

test('the steps of a fill, a box, a pull box and a pull end in what is answered', () => {
  const last = <T>(work: Parameters<typeof explained<T>>[0]) => {
    const { result, steps } = explained(work);
    return { result, step: steps.at(-1) };
  };
  const filled = last((tell) =>
    fill(nec, { method: 'EMT', conductors: [{ size: '8', insulation: 'THWN-2', count: 3 }] }, tell),
  );
  expect(filled.step?.result).toBe(filled.result.fillPercent);
  const boxed = last((tell) => boxVolume(nec, { conductors: [{ size: '8', count: 3 }] }, tell));
  expect(boxed.step?.result).toBe(boxed.result.volume);
  const pulled = last((tell) => pullBox(nec, { straight: ['2'], rows: [['2', '1']] }, tell));
  expect(pulled.step?.result).toBe(pulled.result.length);
  const dragged = last((tell) =>
    pulling({ segments: [{ kind: 'straight', length: 10 }], weightPerFoot: 1, friction: 0.5 }, tell),
  );
  expect(dragged.step?.result).toBe(dragged.result.tension.at(-1));
});

describe('RHW and its kin by their covering: Chapter 9 Table 5, from memory', () => {
  const filled = (insulation: string, size: string, count: number) =>
    CALC_KINDS.get('fill')!({ method: 'EMT', conductors: [{ size, insulation, count }] }, SILENT);
  test.each([
    ['RHW with covering', '12', 0.0353],
    ['RHW without covering', '12', 0.026],
    ['RHW-2 with covering', '8', 0.0835],
    ['RHH without covering', '8', 0.0556],
  ])('%s %s AWG: %d square inches', (insulation, size, area) => {
    const result = filled(insulation, size, 8);
    expect(result.ok && (result.value as { conductorArea: number }).conductorArea).toBeCloseTo(8 * area, 9);
  });
  test.each(['RHW', 'RHW-2', 'RHH'])('%s alone is asked which', (insulation) => {
    const result = filled(insulation, '12', 8);
    expect(result).toMatchObject({ ok: false, errors: [{ place: 'conductors[0].insulation' }] });
    expect(JSON.stringify(result)).toContain(`${insulation} with covering`);
  });
  test('a site that says RHW-2 gets the larger, with a covering', () => {
    expect(findConductorArea(nec, 'RHW-2', '8')).toBe(0.0835);
    expect(findConductorArea(nec, 'USE-2', '8')).toBe(0.0556);
  });
});

test('the working of a pull says which formula a straight and a bend go by', () => {
  const segments: PullSegment[] = [
    { kind: 'straight', length: 100 },
    { kind: 'bend', angle: 90, radius: 1 },
  ];
  const { steps } = explained((tell) => pulling({ segments, weightPerFoot: 1, friction: 0.5 }, tell));
  expect(steps[0]!.formula).toContain('weight x length');
  expect(steps[0]!.values).toMatchObject({ length: '100 ft' });
  expect(steps[1]!.formula).toContain('e^(friction x angle)');
  expect(steps[1]!.values).toMatchObject({ angle: '90 degrees' });
});
