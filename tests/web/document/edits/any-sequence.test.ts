import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { runsOf } from '../../../../routing/network/runs.ts';
import { readSite } from '../../../../routing/site/file/read.ts';
import { writeSite } from '../../../../routing/site/file/write.ts';
import { ELEMENT_LISTS } from '../../../../routing/site/kinds/kinds.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { editErrors } from '../../../../web/document/change/edit-errors.ts';
import { elementsOf } from '../../../../web/document/change/element-lists.ts';
import { afterTurn, type History, newHistory, pastFits } from '../../../../web/document/change/history.ts';
import { mirror, moveElements, rotate } from '../../../../web/document/edits/moving/move.ts';
import { SMALL } from '../small-site.ts';
import { anyGesture, editOf } from './any-edit.ts';
import { checkEdit } from './check-edit.ts';

const LIBRARY = ((read) => (read.ok ? read.file : expect.fail('the sample is not valid')))(
  readSite(readFileSync('samples/library-lot.site.json', 'utf8')),
);
const METRIC: SiteFile = { ...SMALL, units: 'm' };

test('every edit of any sequence leaves a valid file, is taken back to the letter and survives JSON', () => {
  const property = fc.property(
    fc.constantFrom(SMALL, METRIC, LIBRARY),
    fc.array(anyGesture, { maxLength: 12 }),
    (start, gestures) => {
      gestures.reduce((file, gesture) => {
        const edit = editOf(file, gesture);
        // What the store would refuse (a place out of bounds, a twisted name) is no reachable document.
        return edit && editErrors(checkedApply(file, edit), edit).length === 0 ? checkEdit(file, edit) : file;
      }, start);
    },
  );
  fc.assert(property, { numRuns: 150 });
});

test('any sequence of edits undone gives the same document, redone the same again', () => {
  const property = fc.property(
    fc.constantFrom(SMALL, LIBRARY),
    fc.array(anyGesture, { maxLength: 20 }),
    (start, gestures) => {
      let history: History = newHistory(start);
      const texts = [writeSite(start)];
      for (const gesture of gestures) {
        const edit = editOf(history.file, gesture);
        if (!edit) continue;
        history = afterTurn(history, 'do', edit);
        texts.push(writeSite(history.file));
      }
      expect(pastFits(history)).toBe(true);
      for (const text of texts.slice(0, -1).reverse()) {
        history = afterTurn(history, 'undo', history.done.at(-1)!);
        expect(writeSite(history.file)).toBe(text);
      }
      expect(history.done).toEqual([]);
      for (const text of texts.slice(1)) {
        history = afterTurn(history, 'redo', history.undone.at(-1)!);
        expect(writeSite(history.file)).toBe(text);
      }
      expect(history.undone).toEqual([]);
    },
  );
  fc.assert(property, { numRuns: 150 });
});

test('no edit that a hand makes within bounds is refused', () => {
  const property = fc.property(fc.constantFrom(SMALL, METRIC), anyGesture, (file, gesture) => {
    const edit = editOf(file, gesture);
    if (edit) expect(editErrors(checkedApply(file, edit), edit)).toEqual([]);
  });
  fc.assert(property, { numRuns: 400 });
});

test('moving, turning or mirroring the whole lot changes no run', () => {
  const refs = ELEMENT_LISTS.flatMap((list) => elementsOf(LIBRARY, list).map(({ id }) => ({ list, id })));
  const lengths = (file: SiteFile) => runsOf(toSite(file)).runs.map(({ length }) => length);
  const before = lengths(LIBRARY);
  expect(before.every((length) => length !== null)).toBe(true);
  for (const edit of [
    moveElements(LIBRARY, refs, 123.25, -77.5),
    rotate(LIBRARY, refs, [10, 20], 90),
    rotate(LIBRARY, refs, [10, 20], 37),
    mirror(LIBRARY, refs, [50, 0], 90),
  ]) {
    for (const [i, length] of lengths(checkEdit(LIBRARY, edit)).entries()) expect(length).toBeCloseTo(before[i]!, 4);
  }
});

const checkedApply = (file: SiteFile, edit: Parameters<typeof checkEdit>[1]): SiteFile =>
  afterTurn(newHistory(file), 'do', edit).file;
