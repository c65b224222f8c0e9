import { expect, test } from 'vitest';
import { toSite } from '../../../../routing/site/to-site.ts';
import { type BoardDraft, EMPTY } from '../../../../web/board/draw/draft.ts';
import { FIRST_DRAW_OPTIONS, toolOf } from '../../../../web/board/draw/tool-names.ts';
import { PLAIN_TOOLS } from '../../../../web/board/draw/tools/plain.ts';
import { ACTIONS, type DrawToolName } from '../../../../web/board/kinds/kinds.ts';
import { applyEdit } from '../../../../web/document/change/edit.ts';
import { emptySite } from '../../../../web/document/opening.ts';
import '../../../../web/board/draw/tools/tools.ts';

const CORNERS = [
  [0, 0],
  [10, 0],
  [10, 6],
] as const;
const drawn = (places: readonly (readonly [number, number])[]): BoardDraft => ({
  ...EMPTY,
  spots: places.map((at) => ({ at, z: null, ref: null })),
});

/** What an action puts into an empty site. */
function put(name: DrawToolName, options: object): unknown {
  const file = emptySite();
  const tool = toolOf(name)!;
  const edit = tool.edit({ file, site: toSite(file) }, drawn(CORNERS), { ...FIRST_DRAW_OPTIONS[name], ...options });
  return edit && applyEdit(file, edit)[tool.list];
}

test.each([
  ['aisle', { kind: 'access' }, { id: 'A01', outline: CORNERS, kind: 'access' }],
  ['aisle', {}, { id: 'A01', outline: CORNERS }],
  ['column', { rotation: 15, height: null }, { id: 'C01', at: [0, 0], size: [1, 1], rotation: 15 }],
  ['dimension', { offset: -2 }, { id: 'DIM01', from: [0, 0], to: [10, 0], offset: -2 }],
  ['cloud', { mark: 'B' }, { id: 'CL01', outline: CORNERS, mark: 'B' }],
  ['section', {}, { id: 'SEC01', name: 'Section 01', from: [0, 0], to: [10, 0], look: 10 }],
] as const)('%s with %j makes one element of the places that are pressed', (name, options, made) => {
  expect(put(name, options)).toEqual([made]);
});

test('an action asks for each press until it has its places, and turns the other way round by its option', () => {
  const { dimension, cloud, column } = PLAIN_TOOLS;
  const asks = [0, 1].map((set) => dimension.advice(drawn(CORNERS.slice(0, set)), { offset: 3 }));
  expect(asks.map(({ next }) => next)).toEqual(['Press where it is measured from.', 'Press where it is measured to.']);
  expect(asks.map(({ keys }) => keys.at(-1)![1])).toEqual(['select', 'throw away']);
  expect(dimension.turned!({ offset: 3 })).toEqual({ offset: -3 });
  expect(cloud.turned).toBeUndefined();
  expect(column.advice(EMPTY, FIRST_DRAW_OPTIONS.column).next).toBe('Press where it stands.');
});

test('an action that makes elements by itself has as many words as it has presses', () => {
  const presses = { point: 1, line: 2, outline: 0 };
  for (const action of Object.values(ACTIONS))
    if ('makes' in action) expect(action.makes.presses).toHaveLength(presses[action.makes.shape]);
});
