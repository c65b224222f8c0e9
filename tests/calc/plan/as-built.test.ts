import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { asBuiltOf, siteAsBuilt } from '../../../calc/plan/as-built.ts';
import { marginsOf } from '../../../calc/plan/margins.ts';
import { plan } from '../../../calc/plan/plan.ts';
import { writePlan } from '../../../calc/plan/write-plan.ts';
import { readSite } from '../../../routing/site/file/read.ts';
import type { AsBuilt, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';

function library(): SiteFile {
  const read = readSite(readFileSync('samples/library-lot.site.json', 'utf8'));
  if (!read.ok) throw new RangeError('the sample is not read');
  return read.file;
}

const withBuilt = (asBuilt: Readonly<Record<string, AsBuilt>>) => toSite({ ...library(), asBuilt });
const drop = library().drops!.find(({ id }) => id === 'D05')!;
const [x, y, z] = drop.box;
const [rx, ry, rz] = drop.retractor!;
const charger = library().chargers!.find((each) => each.drop === 'D05')!.id;
/** Two and a half feet along the row, as one tape found it. */
const OFF: AsBuilt = { box: [x + 2.5, y, z], retractor: [rx + 2.5, ry, rz] };

test('as built is what the plan says of the lot once the drop is drawn where it was built; the drawing stays', () => {
  const plain = toSite(library());
  const before = plan(plain);
  const site = withBuilt({ D05: OFF });
  const drawn = plan(site);
  const built = asBuiltOf(drawn, site);
  const file = library();
  const redrawn = toSite({
    ...file,
    drops: file.drops!.map((each) => (each.id === 'D05' ? { ...each, ...OFF } : each)),
  });
  const wanted = marginsOf(plan(redrawn), redrawn).get(charger)!;
  const [own] = built.drops.get('D05')!.chargers;
  expect(own!.built).toEqual(wanted);
  expect(own!.drawn).toEqual(marginsOf(before, plain).get(charger));
  expect(own!.built.cord!.left).toBeLessThan(own!.drawn.cord!.left - 0.5);
  expect(own!.run.built).toBe(plan(redrawn).runs.find((run) => run.charger === charger)!.length);
  expect(built.drops.get('D05')!.away).toBeCloseTo(2.5, 12);
  // The plan as drawn is the one without the record but for the word that it was built elsewhere.
  expect(drawn.runs).toEqual(before.runs);
  expect(drawn.reach).toEqual(before.reach);
  expect(drawn.takeoff).toEqual(before.takeoff);
  expect(drawn.findings.filter(({ rule }) => rule !== 'as-built')).toEqual(
    before.findings.filter(({ rule }) => rule !== 'as-built').map((f) => (f.rule === 'sound' ? expect.anything() : f)),
  );
  expect(drawn.findings.find(({ rule }) => rule === 'as-built')).toMatchObject({
    severity: 'warn',
    about: ['D05'],
    value: expect.closeTo(2.5, 9),
    limit: 0.25,
  });
});

test('what fails only as built is told as built: a box too high has no run, a cord too far off is short', () => {
  const site = withBuilt({ D05: { box: [x, y, z + 7], checkedOn: '2026-05-31' } });
  const built = asBuiltOf(plan(site), site);
  const found = built.drops.get('D05')!;
  // The retractor was not measured: it went up with its box.
  expect(found.drop.retractor).toEqual([rx, ry, rz + 7]);
  expect(found.chargers[0]!.run).toEqual({ drawn: expect.any(Number), built: null });
  expect(found.chargers[0]!.built.branch).toBeNull();
  const rules = found.findings.filter(({ severity }) => severity === 'fail').map(({ rule }) => rule);
  expect(rules).toContain('no-run');
  expect(plan(site).findings.some(({ severity }) => severity === 'fail')).toBe(false);
});

test('within the tolerance of the site it is as drawn; the rule decides', () => {
  const near = { D05: { box: [x + 0.2, y, z], retractor: [rx, ry, rz] } } as const;
  const told = (rules: SiteFile['rules']) =>
    plan(
      toSite({ ...library(), ...(rules && { rules: { ...library().rules, ...rules } }), asBuilt: near }),
    ).findings.filter(({ rule }) => rule === 'as-built');
  expect(told(undefined)).toEqual([]);
  expect(told({ builtTolerance: 0.1 })).toHaveLength(1);
});

test('kept by identity: the same site and plan give the same objects, and drops not measured are those drawn', () => {
  const site = withBuilt({ D05: OFF, D06: { checkedOn: '2026-05-31' } });
  const drawn = plan(site);
  expect(asBuiltOf(drawn, site)).toBe(asBuiltOf(drawn, site));
  const moved = siteAsBuilt(site);
  expect(moved.drops.filter((each, i) => each !== site.drops[i]).map(({ id }) => id)).toEqual(['D05']);
  expect([...asBuiltOf(drawn, site).drops.keys()]).toEqual(['D05']);
  const none = toSite(library());
  expect(siteAsBuilt(none)).toBe(none);
});

test('the published plan has it beside the drawing, in the units of the file, and not where nothing was measured', () => {
  const site = withBuilt({ D05: OFF });
  const written = JSON.parse(JSON.stringify(writePlan(plan(site), site)));
  expect(written.asBuilt.drops).toHaveLength(1);
  const [own] = written.asBuilt.drops;
  const { built, drawn } = asBuiltOf(plan(site), site).drops.get('D05')!.chargers[0]!;
  expect(own.chargers[0].cord).toEqual({ drawn: drawn.cord!.left, built: built.cord!.left });
  const none = toSite(library());
  expect(writePlan(plan(none), none)).not.toHaveProperty('asBuilt');
});
