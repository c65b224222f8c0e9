import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import type { Plan } from '../../../calc/plan/plan-shape.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { costOf } from '../../../calc/takeoff/bid/cost.ts';
import type { Drop, Point3, Raceway, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { charger, panel } from '../../routing/network/sites.ts';

interface Lot {
  readonly at: readonly number[];
  readonly depth?: number;
  readonly riser?: Raceway['method'];
  readonly more?: Partial<Raceway>;
  readonly parts?: Partial<SiteFile>;
}

/** Boxes at grade at some distances, each up a riser out of one trench. */
function lot({ at, depth = 2, riser = 'PVC40', more = {}, parts = {} }: Lot): SiteFile {
  const buried = (id: string, method: Raceway['method'], path: Point3[]): Raceway => ({
    id,
    path: path as unknown as Raceway['path'],
    method,
    place: 'underground',
    ...more,
  });
  return {
    format: 'overrow/site',
    version: 1,
    units: 'ft',
    name: 'in the ground',
    equipment: [panel('P1', [0, 0, 4])],
    raceways: [
      buried('U1', 'PVC40', [
        [0, 0, 2],
        [0, 0, -depth],
        [Math.max(...at), 0, -depth],
      ]),
      ...at.map((x, i) =>
        buried(`S${i + 1}`, riser, [
          [x, 0, -depth],
          [x, 0, 2],
        ]),
      ),
    ],
    drops: at.map((x, i): Drop => ({ id: `D${i + 1}`, box: [x, 0, 3], cord: 20, mount: 'pedestal' })),
    chargers: at.map((_, i) => charger(`C${i + 1}`, `D${i + 1}`, 'P1')),
    ...parts,
  };
}

const planned = (one: Lot): Plan => plan(toSite(lot(one)));
const items = ({ takeoff }: Plan, item: string) =>
  takeoff.filter((row) => row.item === item).map(({ spec, quantity }) => [spec, quantity]);
const found = ({ findings }: Plan) => findings.filter(({ rule }) => rule === 'buried-box');

describe('where circuits part in the ground', () => {
  // A second conduit of 1 in. costs about $5 a foot in place, a handhole some $330: 200 ft pay for one, 20 ft do not.
  const far = planned({ at: [200, 210] });

  test('a handhole is bought, never a steel box', () => {
    expect(far.boxes.filter(({ under }) => under !== null)).toHaveLength(1);
    expect(items(far, 'handhole')).toEqual([['12 x 12 in, Tier 22', 1]]);
    expect(items(far, 'junction box')).toEqual([]);
    expect(items(far, 'cover')).toEqual([]);
  });

  test('and priced by the list that is there from the start', () => {
    expect(costOf(far.takeoff, INVENTED_LIST, 2).missing).toEqual([]);
  });

  test('and told, with what it bears', () => {
    expect(found(far)).toMatchObject([{ about: far.handholes.map(({ id }) => id), value: 1 }]);
    expect(found(far)[0]!.says).toContain('1 of 12 x 12 in, Tier 22');
  });

  test('right under a pedestal it is to be looked at: its cover would not open', () => {
    expect(found(far)[0]!.severity).toBe('warn');
    expect(found(far)[0]!.says).toContain('lies under a pedestal: set it beside it');
    const beside = lot({ at: [200, 210] });
    const aside = plan(
      toSite({
        ...beside,
        drops: beside.drops!.map((drop) => ({ ...drop, box: [drop.box[0], 0.6, 3] as const })),
      } as SiteFile),
    );
    expect(found(aside)[0]!.severity).toBe('note');
  });

  test('circuits whose shared way is short run apart instead, and want none', () => {
    const near = planned({ at: [20, 30] });
    expect(near.handholes).toEqual([]);
    expect(found(near)).toEqual([]);
    expect(near.conduits).toHaveLength(2);
  });
});

describe('a pull point drawn in the ground', () => {
  const pulled = (more: Partial<Lot> = {}, pull: Point3 = [30, 0, -2]): Plan =>
    planned({
      at: [60],
      ...more,
      parts: { pullpoints: [{ id: 'PB1', at: pull as [number, number, number] }], ...more.parts },
    });

  test('is a handhole rated for what comes over it', () => {
    const aisle = (kind?: 'walk' | 'fire') => ({
      aisles: [
        {
          id: 'A1',
          outline: [
            [20, -5],
            [40, -5],
            [40, 5],
            [20, 5],
          ] as [number, number][],
          ...(kind && { kind }),
        },
      ],
    });
    const rating = (more: Partial<Lot> = {}): string[] => pulled(more).handholes.map((one) => one.rating);
    expect(rating()).toEqual(['Tier 22']);
    expect(rating({ more: { surface: 'soil' } })).toEqual(['Tier 8']);
    expect(rating({ parts: aisle() })).toEqual(['H-20']);
    expect(rating({ parts: aisle('fire') })).toEqual(['H-20']);
    expect(rating({ parts: aisle('walk') })).toEqual(['Tier 8']);
    expect(items(pulled(), 'pull point')).toEqual([]);
    expect(items(pulled(), 'conduit body')).toEqual([]);
  });

  test('fails where it stands under a column or under equipment', () => {
    const columns = [{ id: 'K1', at: [30, 0] as [number, number], size: [1, 1] as [number, number] }];
    expect(found(pulled({ parts: { columns } }))).toMatchObject([
      { severity: 'fail', about: ['PB1', 'K1'] },
      { severity: 'note' },
    ]);
  });

  test('fails where it lies deeper than an arm reaches', () => {
    expect(found(pulled({ depth: 5 }, [30, 0, -5]))).toMatchObject([
      { severity: 'fail', about: ['PB1'], value: 5, limit: 4 },
      { severity: 'note' },
    ]);
    expect(found(pulled({ depth: 4 }, [30, 0, -4])).map(({ severity }) => severity)).toEqual(['note']);
  });
});

describe('where only the method changes in the ground', () => {
  const changed = planned({ at: [50], riser: 'PVC80' });

  test('the conduits are coupled: no box, one elbow and one coupling at the foot of the riser', () => {
    expect(changed.conduits.map(({ method, from, to }) => [method, from, to])).toEqual([
      ['PVC40', 'P1', 'P1-1.C1'],
      ['PVC80', 'P1-1.C1', 'D1'],
    ]);
    expect(changed.boxes.map(({ id }) => id)).toEqual(['D1']);
    expect(items(changed, 'handhole')).toEqual([]);
    // From the panel 6 ft down, 50 along: elbows at the foot of the panel's riser and of the pedestal's.
    expect(items(changed, 'elbow')).toEqual([['PVC40 1 in, 90 degrees', 2]]);
    // Sticks come belled: one at each elbow, whose other end goes into a bell.
    expect(items(changed, 'coupling')).toEqual([['PVC40 1 in', 2]]);
    // One grounding conductor goes through: 5 ft at the panel, 6 down, 50, 5 up to the box and a foot there.
    const grounding = changed.takeoff
      .filter(({ item }) => item === 'grounding conductor')
      .flatMap(({ parts }) => parts);
    expect(grounding).toEqual([{ of: 'P1-1.1', quantity: changed.runs[0]!.length! + 5 + 1 }]);
    // One connector at the panel, one at the box.
    expect(items(changed, 'connector')).toEqual([
      ['PVC40 1 in', 1],
      ['PVC80 1 in', 1],
    ]);
  });

  test('they are pulled as one: bends on either side of the coupling add up', () => {
    const file = lot({ at: [50] });
    const bent: SiteFile = {
      ...file,
      raceways: [
        file.raceways![0]!,
        {
          id: 'S1',
          path: [
            [50, 0, -2],
            [50, 10, -2],
            [60, 10, -2],
            [60, 20, -2],
            [60, 20, 2],
          ],
          method: 'PVC80',
          place: 'underground',
        },
      ],
      drops: [{ id: 'D1', box: [60, 20, 3], cord: 20, mount: 'pedestal' }],
    };
    const bends = plan(toSite(bent)).findings.find(({ rule }) => rule === 'bends');
    // Down, along, round twice, across and up: five of 90 degrees.
    expect(bends).toMatchObject({ severity: 'fail', value: 450, limit: 360 });
  });
});

describe('the least trade size in the ground', () => {
  test('is 1 in. unless the site has another; overhead it is what the conductors want', () => {
    const sizes = (rules: NonNullable<SiteFile['rules']>) =>
      planned({ at: [50], parts: { rules } }).conduits.map((c) => c.tradeSize);
    expect(sizes({})).toEqual(['1']);
    expect(sizes({ undergroundTradeSize: '1/2' })).toEqual(['1/2']);
    expect(sizes({ undergroundTradeSize: '2' })).toEqual(['2']);
    const above = planned({ at: [50], more: { place: 'surface' } });
    expect(above.conduits.map((c) => c.tradeSize)).toEqual(['1/2']);
  });
});
