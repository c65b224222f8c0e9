import '../../../../web/document/counted-plan.ts';
import { describe, expect, test } from 'vitest';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { chooseTool } from '../../../../web/board/draw/choose-tool.ts';
import type { Desk } from '../../../../web/board/draw/desk.ts';
import { back, finish, hover, letGo, press, stop } from '../../../../web/board/draw/drawing.ts';
import { changeOptions, turnOver } from '../../../../web/board/draw/drawing-options.ts';
import { takeTyped, type } from '../../../../web/board/draw/typed-in.ts';
import { retyped, startTyping } from '../../../../web/board/typed/typing.ts';
import { createViewStore } from '../../../../web/board/view-store.ts';
import { emptySite } from '../../../../web/document/opening.ts';
import { createDocumentStore } from '../../../../web/document/store.ts';
import { createPageStore } from '../../../../web/page-state/page-store.ts';
import { makeLot } from '../../../bench/make-lot.ts';
import '../../../../web/board/draw/tools/tools.ts';

const at = (x: number, y: number) => ({ at: [x, y] as const, z: null, ref: null });

async function deskWith(file: SiteFile = emptySite()): Promise<Desk> {
  const document = createDocumentStore();
  await document.getState().openFile(file);
  return { document, view: createViewStore(), page: createPageStore() };
}

const done = ({ document }: Desk): readonly string[] =>
  document
    .getState()
    .committed()
    .done.map(({ name }) => name);

describe('drawing on a document', () => {
  test('a row is in the document while the hand draws it, and in its history once it is set', async () => {
    const desk = await deskWith();
    chooseTool(desk, 'stalls');
    press(desk, at(0, 0));
    hover(desk, at(28, 0));
    expect(desk.document.getState().site.stalls).toHaveLength(3);
    hover(desk, at(37, 0));
    expect(desk.document.getState().site.stalls).toHaveLength(4);
    letGo(desk);
    expect(desk.view.getState().draft?.whole).toBe(true);
    expect(done(desk)).toEqual([]);
    changeOptions(desk, 'stalls', { count: 2 });
    expect(desk.document.getState().site.stalls).toHaveLength(2);
    finish(desk);
    expect(done(desk)).toEqual(['Add 2 stalls']);
    expect(desk.document.getState().selection).toHaveLength(2);
    expect(desk.view.getState().draft).toBeNull();
    expect(desk.view.getState().drawOptions.stalls.start).toBe(3);
  });

  test('the next press sets what stands and begins the next', async () => {
    const desk = await deskWith();
    chooseTool(desk, 'equipment');
    press(desk, at(0, 0));
    press(desk, at(20, 0));
    expect(done(desk)).toEqual(['Add equipment P1']);
    expect(desk.document.getState().site.equipment.map(({ id }) => id)).toEqual(['P1', 'P2']);
  });

  test('so does another tool, and going back to selecting', async () => {
    const desk = await deskWith();
    chooseTool(desk, 'equipment');
    press(desk, at(0, 0));
    chooseTool(desk, 'select');
    expect(done(desk)).toEqual(['Add equipment P1']);
  });

  test('thrown away it leaves the document as it was', async () => {
    const desk = await deskWith();
    const { file } = desk.document.getState();
    chooseTool(desk, 'canopy');
    press(desk, at(0, 0));
    hover(desk, at(54, 0));
    expect(desk.document.getState().site.columns).toHaveLength(3);
    stop(desk);
    expect(desk.document.getState().file).toBe(file);
    expect(desk.view.getState().tool).toBe('canopy');
    stop(desk);
    expect(desk.view.getState().tool).toBe('select');
  });

  test('a place is taken back, and a typed length and angle give one', async () => {
    const desk = await deskWith();
    chooseTool(desk, 'raceway');
    press(desk, at(0, 0));
    press(desk, at(10, 0));
    press(desk, at(10, 10));
    expect(back(desk)).toBe(true);
    type(desk, retyped(startTyping('length', "12' 6"), 'angle', '-90'));
    takeTyped(desk);
    finish(desk);
    expect(desk.document.getState().file.raceways?.[0]?.path).toEqual([
      [0, 0, 11],
      [10, 0, 11],
      [10, -12.5, 11],
    ]);
  });

  test('a typed elevation is a riser in the raceway that is drawn', async () => {
    const desk = await deskWith();
    chooseTool(desk, 'raceway');
    press(desk, at(0, 0));
    press(desk, at(10, 0));
    type(desk, startTyping('elevation', '9'));
    takeTyped(desk);
    press(desk, at(20, 0));
    finish(desk);
    expect(desk.document.getState().file.raceways?.[0]?.path.map(([, , z]) => z)).toEqual([11, 11, 9, 9]);
  });

  test('turned over, a row lies on the other side of its line', async () => {
    const desk = await deskWith();
    chooseTool(desk, 'stalls');
    press(desk, at(0, 0));
    press(desk, at(9, 0));
    const headings = (): number[] => desk.document.getState().site.stalls.map(({ heading }) => heading);
    expect(headings()).toEqual([90]);
    turnOver(desk);
    expect(headings()).toEqual([270]);
  });

  test('a second press on the last place finishes a path, and one place alone is no raceway', async () => {
    const desk = await deskWith();
    chooseTool(desk, 'raceway');
    press(desk, at(0, 0));
    press(desk, at(0, 0));
    expect(done(desk)).toEqual([]);
    press(desk, at(10, 0));
    press(desk, at(10, 0));
    expect(done(desk)).toEqual(['Add raceway R01']);
  });
});

test('on a large site a draft is drawn by itself, without a plan at each step, and planned when it is set', async () => {
  const desk = await deskWith(makeLot({ name: 'large', stalls: 900 }));
  const { document, view } = desk;
  const { plan } = document.getState();
  chooseTool(desk, 'raceway');
  press(desk, at(-100, -100));
  for (let x = 0; x < 20; x++) hover(desk, at(x, -100));
  expect(document.getState().plan).toBe(plan);
  expect(view.getState().draftMarks?.raceways).toHaveLength(1);
  press(desk, at(20, -100));
  finish(desk);
  await expect.poll(() => done(desk)).toEqual([expect.stringContaining('Add raceway')]);
  expect(view.getState().draftMarks).toBeNull();
  expect(document.getState().site.raceways.at(-1)!.path).toHaveLength(2);
});
