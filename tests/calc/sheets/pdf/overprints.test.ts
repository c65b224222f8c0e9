import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { plan } from '../../../../calc/plan/plan.ts';
import { planDrawing } from '../../../../calc/sheets/drawing/plan-drawing.ts';
import type { Job } from '../../../../calc/sheets/pdf/kit/draft.ts';
import { LETTERS } from '../../../../calc/sheets/pdf/kit/lettering/letters.ts';
import { sheetShape } from '../../../../calc/sheets/pdf/kit/paper.ts';
import { titleLines } from '../../../../calc/sheets/pdf/kit/title/title-names.ts';
import { scalesOf } from '../../../../calc/sheets/pdf/kit/view/scales.ts';
import { enlargedAreas } from '../../../../calc/sheets/pdf/plans/enlarged/enlarged-areas.ts';
import { feedersInPlan } from '../../../../calc/sheets/pdf/plans/feeders-on-plan.ts';
import { planSheet } from '../../../../calc/sheets/pdf/plans/plan-sheet.ts';
import { runStrip } from '../../../../calc/sheets/pdf/strips/run-strip.ts';
import { drawStrip } from '../../../../calc/sheets/pdf/strips/strip-drawing.ts';
import { readSite } from '../../../../routing/site/file/read.ts';
import type { Site } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { alongLine, overlap } from './kit/overlap.ts';
import { plainLettering } from './kit/plain-lettering.ts';
import { watchedPen } from './kit/watched-pen.ts';

function sample(name: string): Site {
  const read = readSite(readFileSync(`samples/${name}.site.json`, 'utf8'));
  if (!read.ok) throw new RangeError('the sample is not read');
  return toSite(read.file);
}

describe('a strip of a run under the ground', () => {
  const site = sample('library-pedestals');
  const planned = plan(site);
  const scale = scalesOf('ft').find(({ ratio }) => ratio === 128)!;
  test.each(planned.runs.map((run) => [run.charger, run] as const))('of %s has no word over its conduits', (_, run) => {
    const { pen, written, lines } = watchedPen('ANSI D');
    const strip = runStrip(site, planned, run)!;
    drawStrip(pen, { x: 0, y: 0, width: 900, height: 150 }, site, planned, run, strip, {
      along: scale,
      up: scale,
      low: -2,
      high: 6,
    });
    const names = new Set([...strip.openings.map(({ id }) => id), run.drop, '90°']);
    const labels = written.filter(({ text }) => names.has(text) || /PVC\d+ \(\d+\)$/.test(text));
    expect(labels.map(({ text }) => text)).toEqual(expect.arrayContaining([run.drop]));
    // Rails and risers are the lines as heavy as conduits are drawn.
    const heavy = lines.filter(({ ink, points }) => ink.weight === 0.5 && points.length === 2);
    expect(heavy.length).toBeGreaterThan(1);
    for (const { text, area } of labels)
      for (const { points } of heavy)
        for (const piece of alongLine(points, 0.1)) expect([text, overlap(area, piece)]).toEqual([text, false]);
    for (const [i, a] of labels.entries())
      for (const b of written.filter((other) => other !== a).slice(i)) expect(overlap(a.area, b.area)).toBe(false);
  });
});

test('the name of a feeder whose way is not drawn stands beside it, not on it, and clear of working spaces', () => {
  const site = sample('fleet-yard');
  const planned = plan(site);
  const { pen, written, lines } = watchedPen('ANSI D');
  const drawing = planDrawing(site, planned);
  const job = {
    site,
    plan: planned,
    shape: sheetShape('ANSI D'),
    lettering: plainLettering('ANSI D'),
    underlays: [],
    remarks: [],
    parts: new Set(['plan']),
    date: '2026-11-25',
    file: 'yard',
  } as unknown as Job;
  expect(enlargedAreas(site, job.shape, LETTERS['ANSI D'], drawing)).not.toBeNull();
  planSheet(job, drawing, false).draw(pen, new Map());
  const dotted = feedersInPlan(site).filter(({ isRouted }) => !isRouted);
  expect(dotted.length).toBeGreaterThan(0);
  for (const { feeder } of dotted) {
    const name = written.find(({ text }) => text.startsWith(`${feeder.id}, `) || text.startsWith(`${feeder.id} (E)`));
    expect(name).toBeDefined();
    const over = lines.filter(
      ({ ink, points }) =>
        ink.dash !== undefined && [...alongLine(points, 0)].some((piece) => overlap(piece, name!.area)),
    );
    expect(over.map(({ points }) => points)).toEqual([]);
  }
});

test('no title of a sheet is cut short: a long one is set smaller', () => {
  const lettering = plainLettering('ANSI D');
  const title = 'SCHEDULES: CIRCUITS AND RUNS, PANELS, FEEDERS, CONDUITS, SETTING-OUT, TAKEOFF';
  const { size, lines } = titleLines(title, 180, lettering);
  expect(lines.join(' ')).toBe(title);
  expect(size).toBeLessThan(lettering.sizes.title);
  expect(titleLines('ONE-LINE', 180, lettering)).toEqual({ size: lettering.sizes.title, lines: ['ONE-LINE'] });
});
