import { newId } from '../../../../routing/site/new-id.ts';
import { printLength } from '../../../../routing/site/numbers/feet-inches.ts';
import { addElements } from '../../../document/edits/add.ts';
import { type DrawTool, lineOf, spotsOf } from '../draft.ts';
import type { ElevationOptions } from '../options.ts';

/** A pull point, at the elevation of the raceway that it is put on. */
export const pullpointTool: DrawTool<ElevationOptions> = {
  shape: 'point',
  atOnce: true,
  list: 'pullpoints',
  edit: ({ file }, draft, { elevation }) => {
    const [spot] = spotsOf(draft);
    if (!spot) return null;
    const z = spot.ref?.list === 'raceways' && spot.z !== null ? spot.z : elevation;
    return addElements(file, 'pullpoints', [{ id: newId(file, 'PB'), at: [...spot.at, z] }]);
  },
  words: () => [],
  advice: () => ({
    action: 'Pull point',
    next: 'Press on a raceway.',
    keys: [
      ['Z', 'elevation'],
      ['Esc', 'select'],
    ],
  }),
  raised: (draft, elevation) => ({ draft, options: { elevation } }),
};

/** A beam or purlin from one end to the other. */
export const memberTool: DrawTool<ElevationOptions> = {
  shape: 'line',
  atOnce: true,
  list: 'members',
  edit: ({ file }, draft, { elevation }) => {
    const line = lineOf(draft);
    if (!line) return null;
    const [from, to] = line;
    return addElements(file, 'members', [{ id: newId(file, 'B'), from: [...from, elevation], to: [...to, elevation] }]);
  },
  words: ({ site }, draft, { elevation }) => {
    const line = lineOf(draft);
    if (!line) return [];
    const [[ax, ay], [bx, by]] = line;
    return [`${printLength(Math.hypot(ax - bx, ay - by), site.units)} at ${printLength(elevation, site.units)}`];
  },
  advice: (draft) => ({
    action: 'Member',
    next:
      draft.spots.length === 0 ? 'Press one end of the beam or purlin.' : 'Press its other end, or type its length.',
    keys: [
      ['0-9', 'length'],
      ['Z', 'elevation'],
      ['Esc', draft.spots.length === 0 ? 'select' : 'throw away'],
    ],
  }),
  raised: (draft, elevation) => ({ draft, options: { elevation } }),
};
