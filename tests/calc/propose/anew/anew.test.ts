import { describe, expect, test } from 'vitest';
import { plan } from '../../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../../calc/prices/invented-list.ts';
import { type AnewWhat, proposeAnew } from '../../../../calc/propose/anew/propose-anew.ts';
import { type Asked, scopeOf } from '../../../../calc/propose/anew/scope.ts';
import { propose } from '../../../../calc/propose/propose.ts';
import { startSite } from '../../../../calc/propose/start-site.ts';
import { readSite } from '../../../../routing/site/file/read.ts';
import { writeSite } from '../../../../routing/site/file/write.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';

const LOT = propose(startSite({ name: 'Twelve', stalls: 12, rows: 2 }), {
  what: 'all',
  cordsADrop: 1,
  prices: INVENTED_LIST,
}).file;

function anew(asked: Asked, what: AnewWhat, { file = LOT, keep = [] as readonly string[] } = {}): SiteFile {
  const scoped = scopeOf(file, asked);
  if (!scoped.ok) throw new Error(scoped.says);
  const wish = { what, scope: scoped.scope, keep: new Set(keep), cordsADrop: 1, prices: INVENTED_LIST };
  const made = proposeAnew(file, wish);
  expect(made.after.fails).toBeLessThanOrEqual(made.before.fails);
  const read = readSite(writeSite(made.file));
  if (!read.ok) throw new Error(read.errors.map(({ says }) => says).join('\n'));
  return made.file;
}

const scope = (asked: Asked): readonly [chargers: readonly string[], stalls: readonly string[]] => {
  const scoped = scopeOf(LOT, asked);
  if (!scoped.ok) throw new Error(scoped.says);
  return [[...scoped.scope.chargers], [...scoped.scope.stalls]];
};

describe('what is meant', () => {
  const [first, second] = LOT.chargers!;
  test('a row is named by any of its stalls, chargers and drops, and has all of them', () => {
    const { heading } = LOT.stalls!.find(({ id }) => id === first!.stalls[0])!;
    const row = LOT.stalls!.filter((stall) => stall.heading === heading).map(({ id }) => id);
    for (const of of [first!.stalls[0]!, first!.id, first!.drop])
      expect([...scope({ kind: 'row', of })[1]].sort()).toEqual([...row].sort());
  });

  test('a panel is all that it feeds; ids are drops, chargers or stalls', () => {
    expect(scope({ kind: 'panel', id: first!.from })[0]).toEqual(LOT.chargers!.map(({ id }) => id));
    expect(scope({ kind: 'only', ids: [first!.drop, second!.id] })[0]).toEqual([first!.id, second!.id]);
  });

  test.each([
    [{ kind: 'row', of: 'none' }, 'no stall is called "none"'],
    [{ kind: 'panel', id: 'none' }, 'no equipment is called "none"'],
    [{ kind: 'only', ids: ['none'] }, 'no element is called "none"'],
    [{ kind: 'only', ids: [LOT.raceways![0]!.id] }, 'neither drops, chargers'],
  ] as const)('%j is refused', (asked, says) => {
    const scoped = scopeOf(LOT, asked as Asked);
    expect(scoped.ok ? '' : scoped.says).toContain(says);
  });
});

describe('what is outside a selection', () => {
  const row = scopeOf(LOT, { kind: 'row', of: LOT.stalls![0]!.id });
  const chargers = row.ok ? row.scope.chargers : new Set<string>();

  test.each(['drops', 'raceways', 'all'] as const)(
    'stays byte for byte as it is where %s are proposed anew',
    (what) => {
      const next = anew({ kind: 'row', of: LOT.stalls![0]!.id }, what);
      const drops = new Set(LOT.chargers!.filter(({ id }) => chargers.has(id)).map(({ drop }) => drop));
      const others = new Set(plan(toSite(LOT)).runs.flatMap((run) => (chargers.has(run.charger) ? [] : run.raceways)));
      const outside = ({
        drops: d = [],
        chargers: c = [],
        raceways: r = [],
        pullpoints: _,
        ...rest
      }: SiteFile): string =>
        JSON.stringify({
          ...rest,
          drops: d.filter(({ id }) => !drops.has(id)),
          chargers: c.filter(({ id }) => !chargers.has(id)),
          raceways: r.filter(({ id }) => others.has(id)),
        });
      expect(outside(next)).toBe(outside(LOT));
      // Chargers keep all but the drop that they hang at, in their places.
      const bare = ({ chargers: c = [] }: SiteFile) => c.map(({ drop: _, ...one }) => one);
      expect(bare(next)).toEqual(bare(LOT));
    },
  );

  test('what is kept stays in the selection too, and so does what somebody recorded as built', () => {
    const [first, second] = LOT.drops!;
    const asBuilt = { [second!.id]: { box: second!.box } };
    const moved = { ...LOT, asBuilt } as SiteFile;
    const next = anew({ kind: 'panel', id: LOT.chargers![0]!.from }, 'all', { file: moved, keep: [first!.id] });
    for (const drop of [first!, second!]) expect(next.drops).toContainEqual(drop);
    expect(next.asBuilt).toEqual(asBuilt);
  });
});

test('a stall of the selection that had none gets a drop and a charger', () => {
  const [last] = LOT.chargers!.slice(-1);
  const file = {
    ...LOT,
    chargers: LOT.chargers!.slice(0, -1),
    drops: LOT.drops!.filter(({ id }) => id !== last!.drop),
  };
  const next = anew({ kind: 'only', ids: last!.stalls }, 'all', { file });
  expect(next.chargers!.at(-1)!.stalls).toEqual(last!.stalls);
  expect(plan(toSite(next)).runs.every(({ ok }) => ok)).toBe(true);
});
