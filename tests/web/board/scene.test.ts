import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { readSite } from '../../../routing/site/file/read.ts';
import type { Member, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { canopyOutlines, hullOf } from '../../../web/board/scene/canopy.ts';
import { chosenMarks } from '../../../web/board/scene/chosen.ts';
import { marksNotIn } from '../../../web/board/scene/differ.ts';
import { pickAt, pickIn } from '../../../web/board/scene/pick.ts';
import { type Scene, sceneOf } from '../../../web/board/scene/scene.ts';
import { applyEdit } from '../../../web/document/change/edit.ts';
import { moveElements } from '../../../web/document/edits/moving/move.ts';

function library(): SiteFile {
  const read = readSite(readFileSync('samples/library-lot.site.json', 'utf8'));
  if (!read.ok) throw new Error('the sample is not valid');
  return read.file;
}

function sceneFor(file: SiteFile, last?: Scene): Scene {
  const site = toSite(file);
  const worked = plan(site);
  return sceneOf(site, worked, last);
}

test('moving one drop changes its own marks and leaves every stall, column and raceway the same object', () => {
  const file = library();
  const before = sceneFor(file);
  const edit = moveElements(file, [{ list: 'drops', id: 'D05' }], 0, 0.25);
  const after = sceneFor(applyEdit(file, edit), before);
  const changed = marksNotIn(after, before);
  expect(Object.keys(changed).sort()).toEqual(['drops', 'runs']);
  expect(changed.drops).toHaveLength(1);
  expect(changed.runs).toHaveLength(1);
  expect(after.stalls).toBe(before.stalls);
  expect(after.raceways).toBe(before.raceways);
});

test('taking the move back gives the scene its old marks', () => {
  const file = library();
  const before = sceneFor(file);
  const moved = applyEdit(file, moveElements(file, [{ list: 'drops', id: 'D05' }], 0, 0.25));
  const after = sceneFor(moved, before);
  const back = sceneFor(applyEdit(moved, moveElements(moved, [{ list: 'drops', id: 'D05' }], 0, -0.25)), after);
  expect(back.drops.items.map(({ drop }) => drop.box)).toEqual(before.drops.items.map(({ drop }) => drop.box));
});

test('a drop is taken before the raceway under it, the raceway before the stall, and open ground is nothing', () => {
  const scene = sceneFor(library());
  const [x, y] = scene.site.drops[4]!.box;
  expect(pickAt(scene, [x, y], 0.5)).toEqual({ list: 'drops', id: 'D05' });
  expect(pickAt(scene, [x, y / 2], 0.5)?.list).toBe('raceways');
  expect(pickAt(scene, [scene.site.stalls[4]!.at[0], 13], 0.3)).toEqual({ list: 'stalls', id: 'S05' });
  expect(pickAt(scene, [500, 500], 0.5)).toBeNull();
});

test('a box takes what lies wholly in it and nothing that sticks out', () => {
  const scene = sceneFor(library());
  const box = { minX: 40, minY: 5, maxX: 55, maxY: 12 };
  const ids = pickIn(scene, box).map(({ id }) => id);
  const inside = scene.site.drops.filter(({ box: [x, y] }) => x >= 40 && x <= 55 && y >= 5 && y <= 12);
  expect(ids.sort()).toEqual(inside.map(({ id }) => id).sort());
  expect(ids.length).toBeGreaterThan(0);
});

test('a selected charger is seen by its run and its drop', () => {
  const scene = sceneFor(library());
  const { marks, chargers } = chosenMarks(scene, [{ list: 'chargers', id: 'EV05' }]);
  expect([...chargers]).toEqual(['EV05']);
  expect(marks.drops).toHaveLength(1);
  expect(marks.runs).toHaveLength(1);
  expect(marks.stalls).toBeUndefined();
});

const member = (id: string, x: number): Member => ({ id, from: [x, 0, 12], to: [x, 20, 12] });

test('members that hang together are one canopy, those apart are two', () => {
  const together = [member('a', 0), member('b', 30), { id: 'p', from: [0, 10, 12], to: [30, 10, 12] } as Member];
  expect(canopyOutlines(together)).toHaveLength(1);
  const far = [...together, member('c', 100), { id: 'q', from: [100, 5, 12], to: [130, 5, 12] } as Member];
  expect(canopyOutlines(far)).toHaveLength(2);
});

test('a hull holds all its points and turns left at each corner', () => {
  const point = fc.tuple(fc.integer({ min: -50, max: 50 }), fc.integer({ min: -50, max: 50 }));
  fc.assert(
    fc.property(fc.uniqueArray(point, { minLength: 3, maxLength: 40, selector: String }), (points) => {
      const hull = hullOf(points);
      fc.pre(hull.length > 2);
      hull.forEach((a, i) => {
        const b = hull[(i + 1) % hull.length]!;
        for (const p of points)
          expect((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])).toBeGreaterThanOrEqual(0);
      });
    }),
  );
});
