import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { readSite } from '../../../routing/site/file/read.ts';
import { writeSite } from '../../../routing/site/file/write.ts';
import { ELEMENT_LISTS } from '../../../routing/site/kinds/kinds.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { fleetYard } from '../../bench/samples/fleet-yard.ts';
import { libraryLot } from '../../bench/samples/library-lot.ts';
import { bare, failing, proposed } from './propose-parts.ts';

/** The file as it is written and read again. */
function again(file: SiteFile): SiteFile {
  const read = readSite(writeSite(file));
  if (!read.ok) throw new Error(JSON.stringify(read.errors));
  return read.file;
}

/** From the bare ground, each once for all the tests that look at it. */
const LOTS = [
  ['library-lot', bare(libraryLot()), 16],
  ['fleet-yard', bare(fleetYard()), 48],
] as const;
const WHOLE = LOTS.map(([, ground]) => proposed(ground, 'all'));

describe.each(LOTS)('all of %s from the bare ground', (name, ground, stalls) => {
  const { file, parts } = WHOLE[LOTS.findIndex(([each]) => each === name)]!;

  test('has a charger at every stall and nothing in it fails', () => {
    expect(parts.map(({ what, without }) => [what, without])).toEqual([
      ['drops', []],
      ['equipment', []],
      ['raceways', []],
    ]);
    expect(file.chargers!.flatMap((one) => one.stalls).sort()).toEqual(ground.stalls!.map(({ id }) => id).sort());
    expect(file.chargers).toHaveLength(stalls);
    expect(failing(file)).toEqual([]);
    expect(plan(toSite(file)).runs.every(({ ok }) => ok)).toBe(true);
  });

  test('is a site file that reads back the same, ids once each, and what was there untouched', () => {
    expect(again(file)).toEqual(file);
    const ids = ELEMENT_LISTS.flatMap((list) => (file[list] ?? []).map(({ id }) => id));
    expect(new Set(ids).size).toBe(ids.length);
    for (const list of ELEMENT_LISTS)
      (ground[list] ?? []).forEach((element, i) => {
        expect(file[list]![i]).toBe(element);
      });
  });

  test('proposed once more, there is nothing more to propose', () => {
    expect(proposed(file, 'all').file).toEqual(file);
  });

  test('has a bound beside each figure that was sought to be least, and none is under it', () => {
    for (const { measure } of parts) expect(measure!.value).toBeGreaterThanOrEqual(measure!.bound - 1e-9);
  });
});

test('from a source of a higher voltage each panel is fed through a transformer beside it that carries its chargers', () => {
  const { file, parts } = WHOLE[1]!;
  const of = (kind: string) => file.equipment!.filter((one) => one.kind === kind);
  const [panels, transformers] = [of('panelboard'), of('transformer')];
  expect(panels.length).toBeGreaterThan(0);
  expect(transformers.length).toBeGreaterThan(0);
  const feeds = file.feeders!.map(({ from, to }) => `${from} ${to}`);
  for (const transformer of transformers) {
    expect(transformer).toMatchObject({ primaryVolts: 480, secondaryVolts: 208 });
    expect(feeds).toContain(`SVC ${transformer.id}`);
    // The next standard breaker over 125 % of its current at 480 V: NEC 450.3(B) and 240.6(A).
    const rated = (1.25 * transformer.kva! * 1000) / (Math.sqrt(3) * 480);
    const { breakerAmps } = file.feeders!.find(({ to }) => to === transformer.id)!;
    expect(breakerAmps).toBeGreaterThanOrEqual(rated);
    expect(breakerAmps).toBeLessThan(1.34 * rated);
    const own = panels.filter(({ id }) => feeds.includes(`${transformer.id} ${id}`));
    const apart = own.map(({ at }) => Math.hypot(transformer.at[0] - at[0], transformer.at[1] - at[1]));
    expect(Math.min(...apart)).toBeLessThan(12);
  }
  for (const { id } of panels) expect(transformers.some((one) => feeds.includes(`${one.id} ${id}`))).toBe(true);
  for (const { percentLoaded } of plan(toSite(file)).supply.transformers)
    expect(percentLoaded).toBeLessThanOrEqual(100);
  expect(parts[1]!.says.join(' ')).toMatch(/T1, \d+ kVA, 480 V to 208 V, stands by P\d/);
  expect(
    plan(toSite(file)).findings.filter(({ rule, severity }) => rule.startsWith('supply-') && severity !== 'note'),
  ).toEqual([]);
});

/** The file in metres: every number of a place or size of the lists that the bare library lot has. */
function inMetres(file: SiteFile): SiteFile {
  const read = readSite(writeSite(file));
  if (!read.ok) throw new Error('unread');
  const m = (feet: number): number => feet * 0.3048;
  const flat = ([x, y]: readonly [number, number]): [number, number] => [m(x), m(y)];
  const space = ([x, y, z]: readonly [number, number, number]): [number, number, number] => [m(x), m(y), m(z)];
  return {
    ...file,
    units: 'm',
    stalls: file.stalls!.map((one) => ({ ...one, at: flat(one.at), width: m(one.width), depth: m(one.depth) })),
    columns: file.columns!.map((one) => ({
      ...one,
      at: flat(one.at),
      size: flat(one.size),
      ...(one.height && { height: m(one.height) }),
    })),
    members: file.members!.map((one) => ({ ...one, from: space(one.from), to: space(one.to) })),
    aisles: file.aisles!.map((one) => ({ ...one, outline: one.outline.map(flat) })),
    equipment: file.equipment!.map((one) => ({
      ...one,
      at: flat(one.at),
      size: space(one.size),
      entry: space(one.entry),
    })),
    gridlines: { x: [], y: [] },
    keepouts: [],
    vehicles: {},
    rules: {},
  };
}

test('a metric lot gets the same plan in metres as the same lot in feet', () => {
  const feet: SiteFile = { ...bare(libraryLot()), gridlines: { x: [], y: [] }, keepouts: [], vehicles: {}, rules: {} };
  const inFeet = proposed(feet, 'all').file;
  const metric = proposed(inMetres(feet), 'all').file;
  expect(metric.units).toBe('m');
  expect(failing(metric)).toEqual([]);
  expect(metric.drops).toHaveLength(inFeet.drops!.length);
  metric.drops!.forEach(({ box, cord }, i) => {
    const own = inFeet.drops![i]!;
    box.forEach((value, k) => {
      expect(value).toBeCloseTo(own.box[k]! * 0.3048, 3);
    });
    expect(cord).toBeCloseTo(own.cord * 0.3048, 3);
  });
  expect(metric.raceways).toHaveLength(inFeet.raceways!.length);
});

test('drops alone, where nothing can feed them, have no chargers, and it is said', () => {
  // A service alone is nothing to hang a charger on.
  const { file, parts } = proposed(bare(libraryLot()), 'drops');
  expect([file.drops!.length, file.chargers]).toEqual([16, undefined]);
  expect(parts[0]!.says.at(-1)).toContain('no panel to feed them');
  // With equipment, the drops that hang there get them.
  const stood = proposed(file, 'equipment').file;
  const charged = proposed(stood, 'drops').file;
  expect([charged.drops!.length, charged.chargers!.length]).toEqual([16, 16]);
});

test('two cords to a drop halve the drops', () => {
  const { file, parts } = proposed(bare(libraryLot()), 'all', 2);
  expect([file.drops!.length, file.chargers!.length, parts[0]!.measure!.bound]).toEqual([8, 16, 8]);
  expect(file.drops!.every(({ holds }) => holds === 2)).toBe(true);
  expect(failing(file)).toEqual([]);
});

test('where a panel stands it stays, and the best place for what it feeds is told beside it', () => {
  const drawn = libraryLot();
  const { file, parts } = proposed(drawn, 'equipment');
  expect(file).toBe(drawn);
  // Along the lot and square to it, as the raceways of this lot are drawn: the branches are as long as its runs.
  const { runs } = plan(toSite(drawn));
  const feet = Math.round(runs.reduce((sum, { length }) => sum + length!, 0));
  const [said] = parts[0]!.says;
  expect(said).toContain(`P1 stays where it stands: branches of ${feet}' 0" in all along the lot`);
  expect(said).toMatch(
    /The best of \d+ places is x, y .*: branches of \d+' \d+" in all along the lot, \d+' \d+" from what feeds it/,
  );
});

test('an empty site is told that there is nothing to do', () => {
  const empty: SiteFile = { format: 'overrow/site', version: 1, units: 'ft', name: 'empty' };
  const { file, parts } = proposed(empty, 'all');
  expect(file).toEqual(empty);
  expect(parts.map(({ says }) => says[0])).toEqual([
    'No new drop is wanted.',
    'There is nothing for equipment to feed: neither drops nor stalls are drawn.',
    'There is nothing to route to: no charger is drawn.',
  ]);
});
