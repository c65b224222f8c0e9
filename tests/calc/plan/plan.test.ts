import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { circuitOf } from '../../../calc/plan/circuits.ts';
import { plan } from '../../../calc/plan/plan.ts';
import type { Plan } from '../../../calc/plan/plan-shape.ts';
import { writePlan } from '../../../calc/plan/write-plan.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { makeLot } from '../../bench/make-lot.ts';
import { libraryLot } from '../../bench/samples/library-lot.ts';
import { anyLot, trunkLot } from '../branches/lots.ts';

const planOf = (file: SiteFile): Plan => plan(toSite(file));
const written = (file: SiteFile): string => JSON.stringify(writePlan(planOf(file), toSite(file)));

/** The same file read anew, so that nothing is remembered of it. */
const anew = (file: SiteFile): SiteFile => structuredClone(file);

/** A file with one drop moved by a little. */
function nudged(file: SiteFile, at: number, by: number): SiteFile {
  const drops = [...file.drops!];
  const drop = drops[at]!;
  drops[at] = { ...drop, box: [drop.box[0], drop.box[1] + by, drop.box[2]] };
  return { ...file, drops };
}

test('a site without elements has an empty plan, which nobody calls sound', () => {
  const { runs, circuits, conduits, takeoff, findings } = planOf({
    format: 'overrow/site',
    version: 1,
    units: 'ft',
    name: 'empty',
  });
  expect([runs, circuits, conduits, takeoff]).toEqual([[], [], [], []]);
  expect(findings).toEqual([]);
});

describe('a plan after a change', () => {
  test('is that of the changed file read anew', () => {
    let file = makeLot({ name: 'lot', stalls: 90, perCanopy: 30 });
    planOf(file);
    for (const [at, by] of [
      [3, 1],
      [44, -2],
      [3, 8],
      [70, 0.5],
      [3, -9],
    ] as const) {
      file = nudged(file, at, by);
      expect(written(file)).toBe(written(anew(file)));
    }
  });

  test('is that of the changed file, whatever changed', () => {
    const change = fc.record({
      what: fc.constantFrom('drop', 'raceway', 'pullpoint', 'charger', 'rules', 'equipment'),
      which: fc.nat(20),
      by: fc.integer({ min: -6, max: 6 }),
    });
    fc.assert(
      fc.property(anyLot({ mostChargers: 8 }), fc.array(change, { minLength: 1, maxLength: 5 }), (start, changes) => {
        let file = start;
        planOf(file);
        for (const one of changes) {
          file = changed(file, one);
          expect(written(file)).toBe(written(anew(file)));
        }
      }),
      { numRuns: 40 },
    );
  });

  test('gives each circuit that is asked for alone as the list of all has it', () => {
    let file = makeLot({ name: 'lot', stalls: 90, perCanopy: 30 });
    // The third step takes the drop off its raceway: its circuit goes, and the volts at the others change.
    for (const [at, by] of [
      [3, 1],
      [44, -2],
      [3, 30],
      [70, 0.5],
      [3, -31],
    ] as const) {
      file = nudged(file, at, by);
      const moved = planOf(file);
      const alone = file.chargers!.flatMap(({ id }) => circuitOf(moved, id) ?? []);
      expect(alone).toEqual(moved.circuits);
      expect(alone.length).toBe(by === 30 || by === 0.5 ? 89 : 90);
      expect(circuitOf(moved, 'nobody')).toBeUndefined();
    }
  });

  test('keeps every circuit, conduit and reach that the moved drop has nothing to do with', () => {
    const file = makeLot({ name: 'lot', stalls: 240 });
    const before = planOf(file);
    const after = planOf(nudged(file, 100, 0.5));
    const fresh = <T>(a: readonly T[], b: readonly T[]): number => {
      const known = new Set(a);
      return b.filter((item) => !known.has(item)).length;
    };
    // Its home run has three circuits in five conduits at most.
    expect(fresh(before.runs, after.runs)).toBe(1);
    expect(fresh(before.reach, after.reach)).toBe(1);
    expect(fresh(before.circuits, after.circuits)).toBeLessThanOrEqual(3);
    expect(fresh(before.conduits, after.conduits)).toBeLessThanOrEqual(6);
    expect(fresh(before.circuits, after.circuits)).toBeGreaterThan(0);
  });
});

function changed(file: SiteFile, { what, which, by }: { what: string; which: number; by: number }): SiteFile {
  const at = <T>(list: readonly T[], change: (item: T) => T): T[] =>
    list.map((item, i) => (i === which % list.length ? change(item) : item));
  switch (what) {
    case 'drop':
      return {
        ...file,
        drops: at(file.drops!, (drop) => ({ ...drop, box: [drop.box[0] + by, drop.box[1], drop.box[2]] })),
      };
    case 'raceway':
      return {
        ...file,
        raceways: at(file.raceways!, (raceway) => ({
          ...raceway,
          path: raceway.path.map(([x, y, z], i) => (i === raceway.path.length - 1 ? [x, y + by, z] : [x, y, z])),
        })),
      };
    case 'pullpoint':
      return {
        ...file,
        pullpoints: at(file.pullpoints!, (pull) => ({ ...pull, at: [pull.at[0] + by, pull.at[1], pull.at[2]] })),
      };
    case 'charger':
      return { ...file, chargers: at(file.chargers!, (charger) => ({ ...charger, amps: 16 + Math.abs(by) })) };
    case 'equipment':
      return {
        ...file,
        equipment: at(file.equipment!, (one) => ({
          ...one,
          entry: [one.entry[0], one.entry[1] + by / 2, one.entry[2]],
        })),
      };
    default:
      return { ...file, rules: { ...file.rules, circuitsPerConduit: 1 + Math.abs(by) } };
  }
}

describe('findings', () => {
  test('stand fails first, then warnings, then notes, within these by rule and by id', () => {
    const { findings } = planOf(libraryLot());
    const key = ({ severity, rule, about }: (typeof findings)[number]): string =>
      `${['fail', 'warn', 'note'].indexOf(severity)} ${rule} ${about[0] ?? ''}`;
    expect(findings.map(key)).toEqual(findings.map(key).sort());
  });

  test('a plan that fails does not say that it is sound', () => {
    const { findings } = planOf(trunkLot([50], { rules: { branchLimit: 20 } }));
    expect(findings.some(({ severity }) => severity === 'fail')).toBe(true);
    expect(findings.some(({ rule }) => rule === 'sound')).toBe(false);
  });

  test('an edition whose tables are not held is said, and the newest held is used', () => {
    const { findings, circuits } = planOf(trunkLot([50], { rules: { code: 'NEC 1999' } }));
    expect(findings.find(({ rule }) => rule === 'code-edition')?.says).toContain('NEC 1999');
    expect(circuits).toHaveLength(1);
  });
});

describe('the written plan', () => {
  test('holds every field that the contract names', () => {
    const read = JSON.parse(written(libraryLot()));
    expect(read).toMatchObject({ format: 'overrow/plan', version: 1, site: 'Alder Street Library lot' });
    const fields = {
      runs: 'charger drop from length conductorLength taps path raceways bends ok',
      reach: 'charger stall coverage worst cases overVehicle',
      circuits:
        'charger breakerAmps phases conductor grounding pilot currentCarrying ambientC factors ampacity branchDropPercent totalDropPercent worstDropPercent voltsAtBox conduits',
      conduits: 'id method tradeSize length circuits conductors fillPercent fillLimit bends from to',
      takeoff: 'item spec quantity unit basis',
      findings: 'severity rule about says source',
    };
    for (const [list, names] of Object.entries(fields)) {
      expect(read[list].length).toBeGreaterThan(0);
      for (const item of read[list]) expect(Object.keys(item)).toEqual(expect.arrayContaining(names.split(' ')));
    }
    expect(Object.keys(read.supply)).toEqual(expect.arrayContaining(['equipment', 'feeders', 'transformers', 'loads']));
    expect(Object.keys(read.reach[0].worst)).toEqual(
      expect.arrayContaining(['direction', 'inlet', 'needed', 'available', 'margin']),
    );
  });

  test('holds no number that JSON has no word for', () => {
    fc.assert(
      fc.property(anyLot({ mostChargers: 10 }), (file) => {
        const check = (value: unknown): void => {
          if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
          else if (typeof value === 'object' && value !== null) Object.values(value).forEach(check);
        };
        check(writePlan(planOf(file), toSite(file)));
      }),
      { numRuns: 30 },
    );
  });

  test('of a metric file is the same plan in metres', () => {
    const inMetres = (feet: number): number => feet * 0.3048;
    const feet = trunkLot([230], { pullpoints: [] });
    const metres: SiteFile = {
      ...feet,
      units: 'm',
      raceways: feet.raceways!.map((raceway) => ({
        ...raceway,
        path: raceway.path.map(([x, y, z]) => [inMetres(x), inMetres(y), inMetres(z)] as const),
      })),
      equipment: feet.equipment!.map((one) => ({
        ...one,
        at: [inMetres(one.at[0]), inMetres(one.at[1])] as const,
        size: [1, 1, 2] as const,
        entry: [inMetres(one.entry[0]), inMetres(one.entry[1]), inMetres(one.entry[2])] as const,
      })),
      drops: feet.drops!.map((drop) => ({
        ...drop,
        box: [inMetres(drop.box[0]), inMetres(drop.box[1]), inMetres(drop.box[2])] as const,
        cord: inMetres(drop.cord),
      })),
    };
    const a = JSON.parse(written(feet));
    const b = JSON.parse(written(metres));
    expect(b.runs[0].length).toBeCloseTo(inMetres(a.runs[0].length), 9);
    expect(b.runs[0].path[1][0]).toBeCloseTo(inMetres(a.runs[0].path[1][0]), 9);
    expect(b.conduits[0].length).toBeCloseTo(inMetres(a.conduits[0].length), 9);
    expect(b.circuits[0].branchDropPercent).toBeCloseTo(a.circuits[0].branchDropPercent, 9);
    const raceway = (read: typeof a) => read.takeoff.find(({ item }: { item: string }) => item === 'raceway');
    expect(raceway(b)).toMatchObject({ unit: 'm', spec: raceway(a).spec });
    expect(raceway(b).quantity).toBeCloseTo(inMetres(raceway(a).quantity), 9);
    const pull = (read: typeof a) => read.findings.find(({ rule }: { rule: string }) => rule === 'pull-length');
    expect(pull(b)).toMatchObject({ unit: 'm' });
    expect(pull(b).value).toBeCloseTo(inMetres(230), 9);
    expect(pull(b).limit).toBeCloseTo(inMetres(200), 9);
  });
});
