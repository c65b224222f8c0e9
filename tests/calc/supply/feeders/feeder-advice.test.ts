import { describe, expect, test } from 'vitest';
import { chargers, feeder, load, type Parts, panel, source, transformer } from '../small-site.ts';
import { conductor, of } from './feeder-lies-parts.ts';

describe('advice and ratings of feeders', () => {
  test('a ceiling at a transformer is told in amperes of its secondary', () => {
    // 9 chargers of 32 A at 208 V, 75 kVA: 166.3 A, at 480 V 72.1 A; a 70 A breaker leaves 56 A there, 129.2 A here.
    const parts = (managedAmps?: number): Parts => ({
      equipment: [
        source(480),
        transformer('T1', { kva: 75, ...(managedAmps === undefined ? {} : { managedAmps }) }),
        panel('P'),
      ],
      feeders: [feeder('SVC', 'T1', { breakerAmps: 70 }), feeder('T1', 'P')],
      chargers: chargers('P', 9),
    });
    const advised = /T1 to ([\d.]+) A at most/.exec(of(parts(), 'feeder-overload')!.says)![1];
    expect(Number(advised)).toBe(129);
    expect(of(parts(129), 'feeder-overload')).toBeUndefined();
    expect(of(parts(130), 'feeder-overload')).toBeDefined();
  });

  test('a breaker or main of no standard rating is told with the nearest: 240.6(A)', () => {
    const parts = (breakerAmps: number, mainAmps?: number): Parts => ({
      equipment: [source(208), panel('P', mainAmps === undefined ? {} : { mainAmps })],
      feeders: [feeder('SVC', 'P', { breakerAmps, conductor: conductor('600') })],
    });
    expect(of(parts(390), 'breaker-rating')).toMatchObject({ severity: 'warn', value: 390, about: ['F-P', 'P'] });
    expect(of(parts(390), 'breaker-rating')!.says).toContain('350 A and 400 A');
    expect(of(parts(400), 'breaker-rating')).toBeUndefined();
    expect(of(parts(400, 390), 'breaker-rating')).toMatchObject({ about: ['P'] });
    expect(of(parts(7000), 'breaker-rating')!.says).toContain('6000 A is the nearest');
  });

  test.each(['600 kcmil', '601'])('a feeder of %s fails: nothing of it can be checked', (size) => {
    const parts: Parts = {
      equipment: [source(208), panel('P')],
      feeders: [feeder('SVC', 'P', { conductor: conductor(size) })],
    };
    expect(of(parts, 'feeder-size')).toMatchObject({ severity: 'fail' });
  });

  test('a main that is not given counts as the busbar: 705.12', () => {
    // 40 kVA at 208 V is 111 A, 125% 138.8 A: with 200 A more than 240 A.
    const parts: Parts = {
      equipment: [panel('P', { busAmps: 200 })],
      loads: [load('P', 'PV', { volts: 208, phases: 3, va: 40_000, generation: true })],
    };
    const finding = of(parts, 'back-feed')!;
    expect(finding).toMatchObject({ severity: 'fail', limit: 240 });
    expect(finding.value).toBeCloseTo(200 + (1.25 * 40_000) / (Math.sqrt(3) * 208), 6);
    expect(finding.says).toContain('not given');
  });
});
