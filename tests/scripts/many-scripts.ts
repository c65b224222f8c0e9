import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { NAMES } from './names.ts';

interface File {
  [field: string]: unknown;
  stalls: { label?: string }[];
  loads: { name?: string }[];
}

/** A short label for each of the lot's 16 stalls, from names of that many scripts. */
export const LABELS: readonly string[] = Object.entries(NAMES)
  .filter(([script]) => !/^(georgian|gurmukhi|gujarati|telugu|kannada|malayalam)$/.test(script))
  .map(([, name]) => [...name.split(' ')[0]!].slice(0, 5).join(''));

/** The text of the library lot with names in every script: project, notes, stalls, loads, sections, issues. */
export function manyScripts(): string {
  const file = JSON.parse(
    readFileSync(join(import.meta.dirname, '../../samples/library-lot.site.json'), 'utf8'),
  ) as File;
  const names = Object.values(NAMES);
  file.stalls.forEach((stall, i) => {
    stall.label = LABELS[i]!;
  });
  return JSON.stringify({
    ...file,
    name: `Lot ${NAMES.simplified} ${NAMES.greek}`,
    loads: [...file.loads.map((load) => ({ ...load, name: NAMES.cyrillic }))],
    project: {
      number: '№ 12',
      client: NAMES.hebrew,
      address: `${NAMES.arabic} 12`,
      jurisdiction: NAMES.devanagari,
      issues: [{ mark: 'A', date: '2026-11-01', text: NAMES.thai }],
    },
    notes: names.map((text, i) => ({ id: `N${i + 1}`, at: [60 * (i % 2), -14 - 2 * i], text })),
    sections: [{ id: 'SEC1', name: NAMES.korean, from: [30, -6], to: [30, 60], look: 10 }],
    drawings: { scope: [NAMES.japanese], notes: [NAMES.traditional, NAMES.vietnamese] },
  });
}
