import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { printLength } from '../../../../routing/site/numbers/feet-inches.ts';
import { type Planned, plannedSample } from '../planned-samples.ts';
import { setOf } from './drawing-set.ts';
import { close, POPPLER, poppler } from './pdf-parts.ts';

test('the same parts give the same bytes, whatever was drawn before', async () => {
  const library = plannedSample('library-lot');
  const first = await setOf(library);
  await setOf(plannedSample('fleet-yard'));
  const second = await setOf(plannedSample('library-lot'));
  expect(Buffer.from(second).equals(Buffer.from(first))).toBe(true);
  expect(Buffer.from(await setOf(library, { date: '2026-11-26' })).equals(Buffer.from(first))).toBe(false);
});

if (!poppler)
  console.warn(
    'NOT RUN: the drawing set read by a second reader, for poppler was not found. Install it (on Debian, "apt-get install poppler-utils").',
  );

describe.runIf(poppler)('the drawing set of fleet-yard, read by poppler', () => {
  const run = (command: string, sample: Planned, bytes: Uint8Array, args: readonly string[]): string => {
    const folder = mkdtempSync(join(tmpdir(), 'overrow-set-'));
    try {
      const path = join(folder, `${sample.site.units}.pdf`);
      writeFileSync(path, bytes);
      const { stdout, stderr } = spawnSync(
        command,
        args.map((arg) => (arg === 'FILE' ? path : arg)),
        { encoding: 'utf8' },
      );
      expect(stderr).toBe('');
      return stdout;
    } finally {
      rmSync(folder, { recursive: true });
    }
  };
  test('its text has every run’s lengths, its fonts are embedded and cut down', async () => {
    const sample = plannedSample('fleet-yard');
    const bytes = await setOf(sample);
    const text = close(run(POPPLER.text, sample, bytes, ['-raw', 'FILE', '-']));
    for (const { charger, drop, length, conductorLength } of sample.planned.runs) {
      expect(text).toContain(`${charger}at${drop}`);
      expect(text).toContain(
        close(`Run ${printLength(length!, 'ft')}, conductor ${printLength(conductorLength!, 'ft')}`),
      );
    }
    const fonts = run(POPPLER.fonts, sample, bytes, ['FILE']).trim().split('\n').slice(2);
    expect(fonts).toHaveLength(2);
    for (const line of fonts) expect(line).toMatch(/CID TrueType\s+Identity-H\s+yes yes yes/);
  });
});
