import { describe, expect, test } from 'vitest';
import { runStrip, type StripPoint } from '../../../../calc/sheets/pdf/strips/run-strip.ts';
import { plannedSample } from '../../../outside/sheets/planned-samples.ts';

const developed = (points: readonly StripPoint[]): number =>
  points.slice(1).reduce((sum, { along, z }, i) => sum + Math.hypot(along - points[i]!.along, z - points[i]!.z), 0);

describe.each(['library-lot', 'fleet-yard', 'hospital-lot'])('run strips of %s', (name) => {
  const { site, planned } = plannedSample(name);
  const strips = planned.runs.map((run) => ({ run, strip: runStrip(site, planned, run) }));

  test('a strip is as long, unrolled, as its run', () => {
    for (const { run, strip } of strips) {
      if (run.length === null) expect(strip).toBeNull();
      else expect(developed(strip!.points)).toBeCloseTo(run.length, 6);
    }
  });
  test('its conduits lie end to end from entry to box, each as long as the plan says', () => {
    for (const { strip } of strips) {
      if (strip === null) continue;
      for (const { conduit, points } of strip.conduits) expect(developed(points)).toBeCloseTo(conduit.length, 6);
      strip.conduits.slice(1).forEach(({ points }, i) => {
        expect(points[0]!.along).toBeCloseTo(strip.conduits[i]!.points.at(-1)!.along, 6);
      });
      expect(strip.conduits.at(-1)!.points.at(-1)!.along).toBeCloseTo(strip.points.at(-1)!.along, 6);
    }
  });
  test('every bend of the run is on it', () => {
    for (const { run, strip } of strips) if (strip !== null) expect(strip.bends).toHaveLength(run.bends);
  });
});

test('the library’s drop D06 hangs where it was drawn: 82 ft of run over 77 ft of plan', () => {
  const { site, planned } = plannedSample('library-lot');
  const strip = runStrip(site, planned, planned.runs.find(({ drop }) => drop === 'D06')!)!;
  // By hand: 5 ft up the panel's riser, 67 ft along R1 to x = 61, 10 ft out along R7.
  expect(strip.points.map(({ along, z }) => [along, z])).toEqual([
    [0, 6],
    [0, 11],
    [67, 11],
    [77, 11],
  ]);
  expect(strip.retractor).toEqual({ along: 77, z: 10 });
});
