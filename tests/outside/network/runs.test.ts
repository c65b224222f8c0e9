import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { runsOf } from '../../../routing/network/runs.ts';
import { readSiteValue } from '../../../routing/site/file/read.ts';
import { toSite } from '../../../routing/site/to-site.ts';

interface Answer {
  readonly charger: string;
  readonly length: number | null;
  readonly nearest?: number;
  readonly boxTap?: number;
  readonly raceway?: string;
  readonly bends?: number;
}
interface Stored {
  readonly site: unknown;
  readonly runs: readonly Answer[];
}

// Worked out by networkx and shapely: make.py beside this file.
const stored: { readonly lattice: readonly Stored[]; readonly free: readonly Stored[] } = JSON.parse(
  readFileSync(join(import.meta.dirname, 'runs.json'), 'utf8'),
);

const solved = (one: Stored) => {
  const read = readSiteValue(one.site);
  if (!read.ok) throw new Error(JSON.stringify(read.errors));
  return runsOf(toSite(read.file));
};

describe.each(['lattice', 'free'] as const)('runs of the %s sites agree with networkx', (family) => {
  const sites = stored[family].map((one) => ({ ...one, found: solved(one) }));
  const answered = sites.flatMap(({ runs, found }) =>
    runs.map((answer, i) => ({ answer, run: found.runs[i]!, found })),
  );
  const withRun = answered.filter(({ answer }) => answer.length !== null);
  const without = answered.filter(({ answer }) => answer.length === null);

  test('there are many with a run, and some without', () => {
    expect(withRun.length).toBeGreaterThan(150);
    expect(without.length).toBeGreaterThan(20);
  });
  test('every length is the same to a millionth of a foot', () => {
    for (const { answer, run } of withRun) {
      expect(run.charger).toBe(answer.charger);
      expect(run.length).toBeCloseTo(answer.length!, 6);
    }
  });
  test('every box is tapped to the same raceway by the same tap', () => {
    for (const { answer, run } of withRun) {
      expect(run.taps!.box).toBeCloseTo(answer.boxTap!, 6);
      const last = run.legs.filter((id) => id !== null).at(-1);
      // Where the equipment's tap and the box's meet at one point no raceway is travelled.
      if (last !== undefined && run.legs.at(answer.boxTap! > 1e-7 ? -2 : -1) !== null)
        expect(last).toBe(answer.raceway);
    }
  });
  test('of all shortest ways one with the fewest bends is taken', () => {
    for (const { answer, run } of withRun) expect([run.charger, run.bends]).toEqual([answer.charger, answer.bends]);
  });
  test('where there is no run the finding says how far it is', () => {
    for (const { answer, run, found } of without) {
      expect(run.length).toBeNull();
      const finding = found.findings.find(({ rule, about }) => rule === 'no-run' && about[0] === answer.charger)!;
      expect(finding.value).toBeCloseTo(answer.nearest!, 6);
    }
  });
});
