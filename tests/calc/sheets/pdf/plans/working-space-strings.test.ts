import { describe, expect, test } from 'vitest';
import { plan } from '../../../../../calc/plan/plan.ts';
import { type Area, isWithinArea } from '../../../../../calc/sheets/pdf/kit/area.ts';
import { figureRoom, lineAreas } from '../../../../../calc/sheets/pdf/kit/labels/dimension.ts';
import { around } from '../../../../../calc/sheets/pdf/kit/labels/free-space.ts';
import { sheetShape } from '../../../../../calc/sheets/pdf/kit/paper.ts';
import { scalesOf } from '../../../../../calc/sheets/pdf/kit/view/scales.ts';
import { viewIn } from '../../../../../calc/sheets/pdf/kit/view/view.ts';
import { labelGround } from '../../../../../calc/sheets/pdf/plans/label-ground.ts';
import { planRoom } from '../../../../../calc/sheets/pdf/plans/plan-sheet.ts';
import { workingSpaceStrings } from '../../../../../calc/sheets/pdf/plans/strings/working-space-strings.ts';
import { workingSpaceWords } from '../../../../../calc/sheets/pdf/plans/strings/working-space-words.ts';
import { rectangleAt } from '../../../../../routing/plane/rectangle.ts';
import { equipment, siteOf, source } from '../../../supply/small-site.ts';
import { overlap } from '../kit/overlap.ts';
import { plainLettering } from '../kit/plain-lettering.ts';

const scale = scalesOf('ft').find(({ ratio }) => ratio === 48)!;
const view = viewIn(planRoom(sheetShape('ANSI D')), { minX: -20, minY: -20, maxX: 20, maxY: 20 }, scale);

/** One board of 4 ft by 1 ft with 3 ft 6 in before it, turned. */
const lot = (rotation: number) =>
  siteOf({
    equipment: [
      { ...source(208), at: [200, 200] },
      equipment('P1', 'panelboard', { volts: 208, size: [4, 1, 6], workingSpace: 3.5, rotation }),
    ],
  });

function stringsOf(rotation: number, taken: readonly Area[] = []) {
  const site = lot(rotation);
  const ground = labelGround(view, site, plan(site));
  for (const area of taken) ground.hard.take(area);
  return workingSpaceStrings(view, site, ground, plainLettering('ANSI D'));
}

describe.each([0, 90, 180, 270])('before a board that is turned by %s degrees', (rotation) => {
  const strings = stringsOf(rotation);

  test('depth and width are dimensioned, each along its side of the space', () => {
    const isAcross = rotation % 180 === 0;
    expect(strings.map(({ string, figures: [figure] }) => [string.axis, figure!.text])).toEqual([
      [isAcross ? 'y' : 'x', `3' 6"`],
      [isAcross ? 'x' : 'y', `4' 0"`],
    ]);
    for (const { string } of strings) {
      const [low, high] = string.marks;
      expect(high!.feet - low!.feet).toBeCloseTo(string.axis === (isAcross ? 'y' : 'x') ? 3.5 : 4, 9);
      expect(high!.on - low!.on).toBeCloseTo((high!.feet - low!.feet) * view.perFoot, 6);
    }
  });

  test('nothing of them lies on the board, in the space before it, on one another or outside the view', () => {
    const board = around(rectangleAt([0, 0], [4, 1], rotation).map(view.at));
    const [dx, dy] = [Math.sin((rotation * Math.PI) / 180), -Math.cos((rotation * Math.PI) / 180)];
    const space = around(rectangleAt([2.25 * dx, 2.25 * dy], [4, 3.5], rotation).map(view.at));
    const areas = strings.map(({ string, figures: [figure] }) => [...lineAreas(string), figureRoom(figure!)]);
    for (const area of areas.flat()) {
      expect(overlap(area, board) || overlap(area, space)).toBe(false);
      expect(isWithinArea(area, view.area)).toBe(true);
    }
    for (const area of areas[0]!) for (const other of areas[1]!) expect(overlap(area, other)).toBe(false);
  });
});

describe('a space without strings has its sides in words', () => {
  const wordsAt = (rotation: number, taken: readonly Area[] = []): readonly string[] => {
    const site = lot(rotation);
    return workingSpaceWords(view, site, stringsOf(rotation, taken)).flatMap(({ lines }) =>
      lines.map(({ text }) => text),
    );
  };

  test('where it lies askew, or where other things have the room; each side once, in one way', () => {
    for (const rotation of [0, 90, 180, 270]) expect(wordsAt(rotation)).toEqual([]);
    for (const rotation of [30, 45, 200]) expect(wordsAt(rotation)).toEqual([`P1: 3' 6" deep`, `4' 0" wide`]);
    expect(wordsAt(0, [view.area])).toEqual([`P1: 3' 6" deep`, `4' 0" wide`]);
    // Before the board there is no room: the depth has its string beside it, the width its words.
    const [low, edge] = view.at([-20, -4]);
    expect(wordsAt(0, [{ x: low, y: edge - 66, width: 40 * view.perFoot, height: 60 }])).toEqual([`P1: 4' 0" wide`]);
  });

  test('in the space where they go in, else within reach of it', () => {
    const [wish] = workingSpaceWords(view, lot(30), stringsOf(30));
    const [small] = wish!.places({ width: 12, height: 8 });
    const middle = view.at([2.25 * Math.sin(Math.PI / 6), -2.25 * Math.cos(Math.PI / 6)]);
    expect(small!.at[0] + 6).toBeCloseTo(middle[0], 6);
    expect(small!.at[1] + 4).toBeCloseTo(middle[1], 6);
    const [large] = wish!.places({ width: 300, height: 8 });
    expect(Math.hypot(large!.at[0] - middle[0], large!.at[1] - middle[1])).toBeGreaterThan(1.75 * view.perFoot);
  });
});

test('where something else has the room there are none, and askew to the sheet neither', () => {
  expect(stringsOf(0, [view.area])).toEqual([]);
  expect(stringsOf(30)).toEqual([]);
  // The room on the right is taken: the depth stands on the left.
  const [x, y] = view.at([2, -0.5]);
  const [low] = view.at([-2, -0.5]);
  const [depth] = stringsOf(0, [{ x: x + 3, y: y - 80, width: 60, height: 80 }]);
  expect(depth!.string.at).toBeLessThan(low);
});
