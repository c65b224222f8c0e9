import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { plan } from '../../../calc/plan/plan.ts';
import type { Plan } from '../../../calc/plan/plan-shape.ts';
import { readSite } from '../../../routing/site/file/read.ts';
import type { Site, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';

export interface Planned {
  readonly file: SiteFile;
  readonly site: Site;
  readonly planned: Plan;
}

/** A sample with its plan, changed first where `change` is given. A file that does not read throws. */
export function plannedSample(name: string, change: (file: SiteFile) => SiteFile = (file) => file): Planned {
  const read = readSite(readFileSync(join(import.meta.dirname, '../../../samples', `${name}.site.json`), 'utf8'));
  if (!read.ok) throw new Error(read.errors.map(({ place, says }) => `${place}: ${says}`).join('\n'));
  const file = change(read.file);
  const site = toSite(file);
  return { file, site, planned: plan(site) };
}

/** Names that look like formulas, markup, or the control codes of one of the formats. */
export const NASTY = [
  '=1+1',
  '+cmd',
  '-2',
  '@sum',
  '<script>alert(1)</script>',
  '"><b>&amp;',
  "O'Hara \\X2\\",
  'line\nbreak\r\n0\nSECTION',
  '%%u^M',
  '12′ 6″ ½ Ω ≤',
];

/** The library lot with nasty names wherever the file lets a person write one. */
export const nastyLot = (): Planned =>
  plannedSample('library-lot', (file) => ({
    ...file,
    name: NASTY.join(' '),
    stalls: (file.stalls ?? []).map((stall, i) => ({ ...stall, label: NASTY[i % NASTY.length] as string })),
    loads: (file.loads ?? []).map((load) => ({ ...load, name: NASTY.join(' ') })),
    gridlines: {
      ...file.gridlines,
      x: (file.gridlines?.x ?? []).map((line, i) => ({ ...line, label: NASTY[i] as string })),
    },
  }));
