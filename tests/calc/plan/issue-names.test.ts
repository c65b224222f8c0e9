import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { issueNames } from '../../../calc/plan/issue-names.ts';
import { plan } from '../../../calc/plan/plan.ts';
import { circuitTags } from '../../../calc/sheets/pdf/schedules/circuit-words.ts';
import { readSite } from '../../../routing/site/file/read.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';

function sample(name: string): SiteFile {
  const read = readSite(readFileSync(`samples/${name}.site.json`, 'utf8'));
  if (!read.ok) throw new RangeError('the sample is not read');
  return read.file;
}

/** Every name that a plan puts on a wall: of circuits, of conduits by each charger in them, of junction boxes likewise. */
function namesOf(file: SiteFile): ReadonlyMap<string, string> {
  const site = toSite(file);
  const { circuits, conduits, boxes } = plan(site);
  const to = new Map(conduits.map((conduit) => [conduit.id, conduit.to]));
  const junctions = new Set(boxes.flatMap(({ kind, id }) => (kind === 'junction' ? [id] : [])));
  const names = new Map<string, string>();
  for (const [charger, tag] of circuitTags(site)) names.set(`circuit ${charger}`, tag);
  for (const { charger, conduits: own } of circuits) {
    own.forEach((id, i) => {
      names.set(`conduit ${charger}/${i + 1}`, id);
    });
    own
      .map((id) => to.get(id)!)
      .filter((id) => junctions.has(id))
      .forEach((id, i) => {
        names.set(`box ${charger}/${i + 1}`, id);
      });
  }
  return names;
}

/** Names that the same change gave to others where nothing was issued, at the least. */
const LOOSE: Readonly<Record<string, number>> = {
  'library-lot': 20,
  'library-pedestals': 20,
  'fleet-yard': 0,
  'hospital-lot': 5,
};

const issued = (file: SiteFile): SiteFile => {
  const site = toSite(file);
  return { ...file, issued: issueNames(site, plan(site)) };
};

/** One drop moved by two feet along its row, and the charger of another turned down. */
function revised(file: SiteFile, drop: string, charger: string): SiteFile {
  return {
    ...file,
    drops: (file.drops ?? []).map((one) =>
      one.id === drop
        ? {
            ...one,
            box: [one.box[0] + 2, one.box[1], one.box[2]] as const,
            ...(one.retractor && { retractor: [one.retractor[0] + 2, one.retractor[1], one.retractor[2]] as const }),
          }
        : one,
    ),
    chargers: (file.chargers ?? []).map((one) => (one.id === charger ? { ...one, amps: 24 } : one)),
  } as SiteFile;
}

describe.each(['library-lot', 'library-pedestals', 'fleet-yard', 'hospital-lot'])(
  'names of %s that were issued',
  (name) => {
    const file = sample(name);
    const first = issued(file);
    const before = namesOf(first);
    const chargers = file.chargers ?? [];
    const [moved, changed] = [chargers[3]!, chargers[5]!];

    test('are those of the plan that they were issued from', () => {
      expect(namesOf(file)).toEqual(before);
      expect(issued(first).issued).toEqual(first.issued);
    });

    test('stay when a drop is moved and a charger changed, but for what is no more', () => {
      const after = namesOf(revised(first, moved.drop, changed.id));
      expect([name, [...before].filter(([key, was]) => after.get(key) !== was)]).toEqual([name, []]);
      // Nothing is said of it but of the drop and the charger.
      const { findings } = plan(toSite(revised(first, moved.drop, changed.id)));
      expect(findings.filter(({ rule }) => rule === 'issued')).toEqual([]);
      const loose = namesOf(revised(file, moved.drop, changed.id));
      const renamed = [...before].filter(([key, was]) => loose.get(key) !== was).length;
      expect(renamed).toBeGreaterThanOrEqual(LOOSE[name]!);
    });
  },
);

test('a charger that is taken away frees its names for no other, and what is gone is told', () => {
  const first = issued(sample('library-lot'));
  const gone = (first.chargers ?? []).find(({ id }) => id === 'EV06')!;
  const after = { ...first, chargers: (first.chargers ?? []).filter((one) => one !== gone) } as SiteFile;
  const was = namesOf(first);
  const others = [...namesOf(after)].filter(([key, name]) => key.startsWith('circuit ') && was.get(key) !== name);
  expect(others).toEqual([]);
  const says = plan(toSite(after))
    .findings.filter(({ rule }) => rule === 'issued')
    .map((finding) => finding.says);
  expect(says.some((words) => words.includes('EV06 has no circuit'))).toBe(true);
});
