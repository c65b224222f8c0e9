import { describe, expect, test } from 'vitest';
import { isWithinArea } from '../../../../../calc/sheets/pdf/kit/area.ts';
import { figureRoom } from '../../../../../calc/sheets/pdf/kit/labels/dimension.ts';
import { sheetShape } from '../../../../../calc/sheets/pdf/kit/paper.ts';
import { scalesOf } from '../../../../../calc/sheets/pdf/kit/view/scales.ts';
import { viewIn } from '../../../../../calc/sheets/pdf/kit/view/view.ts';
import { labelGround } from '../../../../../calc/sheets/pdf/plans/label-ground.ts';
import { planRoom } from '../../../../../calc/sheets/pdf/plans/plan-sheet.ts';
import { settingOutStrings } from '../../../../../calc/sheets/pdf/plans/strings/setting-out-strings.ts';
import { parseLength } from '../../../../../routing/site/numbers/parse-length.ts';
import { plannedSample } from '../../../../outside/sheets/planned-samples.ts';
import { overlap } from '../kit/overlap.ts';
import { plainLettering } from '../kit/plain-lettering.ts';

const WINDOWS = {
  'library-lot': { minX: -15, minY: -30, maxX: 95, maxY: 30 },
  'fleet-yard': { minX: -20, minY: -30, maxX: 95, maxY: 40 },
  'hospital-lot': { minX: -5, minY: -25, maxX: 100, maxY: 25 },
} as const;

describe.each(Object.keys(WINDOWS) as (keyof typeof WINDOWS)[])('setting-out dimensions of %s', (name) => {
  const { site, planned } = plannedSample(name);
  const scale = scalesOf('ft').find(({ ratio }) => ratio === 48)!;
  const view = viewIn(planRoom(sheetShape('ANSI D')), WINDOWS[name], scale);
  const strings = settingOutStrings(view, site, labelGround(view, site, planned), plainLettering('ANSI D'));

  test('there are strings along the rows and across them', () => {
    expect(strings.map(({ string }) => string.axis)).toEqual(expect.arrayContaining(['x', 'y']));
  });
  test('each figure says what lies between its marks, to half of 1/16 in', () => {
    for (const { string, figures } of strings)
      figures.forEach((figure, i) => {
        if (figure === null) return;
        const between = string.marks[i + 1]!.feet - string.marks[i]!.feet;
        const read = parseLength(figure.text, 'ft');
        expect(read.ok && Math.abs(read.feet - between)).toBeLessThanOrEqual(1 / 384 + 1e-9);
      });
  });
  test('its marks are boxes, retractors and gridlines of the site, and one of them is a gridline', () => {
    for (const { string } of strings) {
      const axis = string.axis === 'x' ? 0 : 1;
      const lines = site.gridlines[string.axis].map(({ at }) => at);
      const set = site.drops.flatMap(({ box, retractor = box }) => [box[axis], retractor[axis]]);
      for (const { feet } of string.marks)
        expect([...lines, ...set].some((at) => Math.abs(at - feet) < 1e-9)).toBe(true);
      expect(string.marks.some(({ feet }) => lines.includes(feet))).toBe(true);
    }
  });
  test('no figure lies over another, and all lie in the view', () => {
    const rooms = strings.flatMap(({ figures }) =>
      figures.flatMap((figure) => (figure === null ? [] : [figureRoom(figure)])),
    );
    rooms.forEach((room, i) => {
      expect(isWithinArea(room, view.area)).toBe(true);
      for (const other of rooms.slice(i + 1)) expect(overlap(room, other)).toBe(false);
    });
  });
});

test('the library’s upper row is set out from its gridlines: 13 ft 6 in past 1, 1 ft short of 2, and on', () => {
  const { site, planned } = plannedSample('library-lot');
  const scale = scalesOf('ft').find(({ ratio }) => ratio === 48)!;
  const view = viewIn(planRoom(sheetShape('ANSI D')), WINDOWS['library-lot'], scale);
  const strings = settingOutStrings(view, site, labelGround(view, site, planned), plainLettering('ANSI D'));
  // Boxes of the row at y = 9, by the site file: x = 13.5, 25, 34, 43, 52, 70, 79; gridlines at 0, 26, 53, 79.
  const row = strings.find(({ string }) => string.axis === 'x' && string.marks.some(({ feet }) => feet === 13.5))!;
  expect(row.string.marks.map(({ feet }) => feet)).toEqual([0, 13.5, 25, 26, 34, 43, 52, 53, 70, 79]);
});
