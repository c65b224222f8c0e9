import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { NEC_2023 } from '../../../calc/tables/nec-2023/nec-2023.ts';
import { supportSpacings } from '../../../calc/tables/raceway-of.ts';
import { supportFindings } from '../../../routing/checks/support/support-findings.ts';
import type { Drop, Member, Point3, Raceway, Site, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { makeLot } from '../../bench/make-lot.ts';

const FILE: SiteFile = { format: 'overrow/site', version: 1, units: 'ft', name: 'x' };
const site = (parts: Partial<SiteFile>): Site => toSite({ ...FILE, ...parts });
const trunk = (more: Partial<Raceway> = {}, ...path: Point3[]): Raceway => ({
  id: 'R1',
  path:
    path.length > 0
      ? path
      : [
          [0, 0, 11],
          [60, 0, 11],
        ],
  method: 'EMT',
  place: 'overhead',
  ...more,
});
/** Beams across a line every so many feet from 0 on. */
const beams = (every: number, z = 12): Member[] =>
  Array.from({ length: Math.floor(60 / every) + 1 }, (_, i) => ({
    id: `B${i + 1}`,
    from: [i * every, -18, z],
    to: [i * every, 18, z],
  }));
const purlin = (y: number, z = 12): Member => ({ id: `P${y}`, from: [0, y, z], to: [60, y, z] });
const found = (parts: Partial<SiteFile>) => supportFindings(site(parts), supportSpacings(NEC_2023));

describe('raceways overhead', () => {
  // NEC 358.30, 344.30(B)(1): EMT and RMC every 10 ft; Table 352.30(B): PVC of 1/2 to 1 in. every 3 ft; 350.30: LFMC 4.5 ft.
  test('are held where no stretch without a member within 3 ft in plan is longer than the supports may be apart', () => {
    // Beams 16 ft apart hold all but 10 ft between them; 20 ft apart, all but 14 ft.
    expect(found({ raceways: [trunk()], members: beams(16) })).toEqual([]);
    expect(found({ raceways: [trunk()], members: beams(20) })).toMatchObject([
      { severity: 'fail', rule: 'unsupported', about: ['R1'], value: 14, limit: 10, unit: 'ft' },
    ]);
    expect(found({ raceways: [trunk({ method: 'PVC40' })], members: beams(10) })).toMatchObject([
      { value: 4, limit: 3 },
    ]);
    expect(found({ raceways: [trunk({ method: 'LFMC' })], members: beams(10) })).toEqual([]);
  });

  test('are held by a member along them up to 3 ft aside, and as far as the site sets', () => {
    expect(found({ raceways: [trunk()], members: [purlin(3)] })).toEqual([]);
    const [aside] = found({ raceways: [trunk()], members: [purlin(3.1)] });
    expect(aside).toMatchObject({ value: 60, limit: 10 });
    expect(aside!.says).toContain('the nearest beam or purlin above or beside it, P3.1, is 3\' 1 3/16" away in plan');
    expect(found({ raceways: [trunk()], members: [purlin(3.1)], rules: { hangReach: 4 } })).toEqual([]);
  });

  test('hang from what is above or beside them, not from what is below', () => {
    expect(found({ raceways: [trunk()], members: [purlin(0, 9.5)] })).toEqual([]);
    const [over] = found({ raceways: [trunk()], members: [purlin(0, 9)] });
    expect(over).toMatchObject({ value: 60 });
    expect(over!.says).toContain('no beam or purlin lies above or beside it');
  });

  test('do not hang where they stand upright, lie on a surface or in the ground', () => {
    const riser = trunk({}, [0, 0, 0], [0, 0, 14]);
    const members = [purlin(100)];
    expect(found({ raceways: [riser], members })).toEqual([]);
    expect(found({ raceways: [trunk({ place: 'surface' })], members })).toEqual([]);
    expect(found({ raceways: [trunk({ place: 'underground' }, [0, 0, -2], [60, 0, -2])], members })).toEqual([]);
    // 9 ft to either side of an upright leg is not 18 ft in the air.
    const stepped = trunk({}, [0, 0, 11], [9, 0, 11], [9, 0, 13], [18, 0, 13]);
    expect(found({ raceways: [stepped], members })).toEqual([]);
  });

  test('add up round a corner', () => {
    const round = trunk({}, [0, 0, 11], [6, 0, 11], [6, 6, 11]);
    expect(found({ raceways: [round], members: [purlin(100)] })).toMatchObject([{ value: 12 }]);
  });

  test('tell how many more stretches of one raceway there are', () => {
    const [one] = found({ raceways: [trunk()], members: beams(20) });
    expect(one!.says).toContain('So do 2 more stretches of it.');
  });
});

describe('drops', () => {
  const drop = (more: Partial<Drop> = {}): Drop => ({
    id: 'D1',
    box: [10, 0, 11],
    retractor: [10, 0, 10],
    cord: 20,
    ...more,
  });

  test('hang with box and retractor from a member within reach', () => {
    expect(found({ drops: [drop()], members: [purlin(3)] })).toEqual([]);
    expect(found({ drops: [drop()], members: [purlin(5)] })).toMatchObject([
      { severity: 'fail', rule: 'unsupported', about: ['D1'], value: 5, limit: 3, unit: 'ft' },
    ]);
    const [apart] = found({ drops: [drop({ retractor: [10, -6, 10] })], members: [purlin(0)] });
    expect(apart!.says).toMatch(/^The retractor of D1 hangs from nothing: .* P0, is 6' 0" away in plan/);
  });

  test('on a pedestal or a wall do not hang', () => {
    for (const mount of ['pedestal', 'wall'] as const)
      expect(found({ drops: [drop({ mount })], members: [purlin(50)] })).toEqual([]);
  });
});

describe('a site on which no member is drawn', () => {
  const drops: Drop[] = [1, 2].map((n) => ({ id: `D${n}`, box: [n, 0, 11], cord: 20 }));

  test('says so once, whatever hangs', () => {
    const [one, ...more] = found({ raceways: [trunk()], drops });
    expect(more).toEqual([]);
    expect(one).toMatchObject({ severity: 'warn', rule: 'unsupported', about: [] });
    expect(one!.says).toContain('1 raceway and 2 drops overhead');
  });

  test('says nothing where nothing hangs, and sound is said only then', () => {
    expect(found({ drops: drops.map((drop) => ({ ...drop, mount: 'pedestal' })) })).toEqual([]);
    const rules = (parts: Partial<SiteFile>): string[] => plan(site(parts)).findings.map(({ rule }) => rule);
    expect(rules({ raceways: [trunk()] })).not.toContain('sound');
  });
});

test('what is kept while things move is what a plan from nothing finds', () => {
  const spacings = supportSpacings(NEC_2023);
  const lot = toSite(makeLot({ name: 'kept', stalls: 100 }));
  expect(supportFindings(lot, spacings)).toEqual([]);
  let now = lot;
  const step = (change: Partial<Site>, fails: number): void => {
    now = { ...now, ...change };
    const kept = supportFindings(now, spacings);
    // Another number of members lets go of everything that is kept.
    supportFindings({ ...now, members: [purlin(0)] }, spacings);
    const fresh = supportFindings(now, spacings);
    expect(kept).toEqual(fresh);
    expect(fresh.length).toBe(fails);
  };
  for (const dy of [3, 9, 12]) {
    const move = (point: Point3): Point3 => [point[0] + 1, point[1] + dy, point[2]];
    const drops = lot.drops.map((drop, i) =>
      i === 7 ? { ...drop, box: move(drop.box), retractor: move(drop.retractor!) } : drop,
    );
    step({ drops }, dy === 3 ? 0 : 1);
  }
  const without = (name: string, y: number): Member[] =>
    lot.members.map((member) =>
      member.id === name ? { ...member, from: [member.from[0], y, 12.5], to: [member.to[0], y, 12.5] } : member,
    );
  // 25 drops hang from it, one of them off already; the nine on a beam's line hang from that.
  step({ members: without('PU1+9', 40) }, 16);
  step({ members: lot.members }, 1);
  step({ drops: lot.drops }, 0);
});
