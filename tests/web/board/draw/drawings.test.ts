import fc from 'fast-check';
import { expect, test } from 'vitest';
import { plan } from '../../../../calc/plan/plan.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { applyEdit, type Edit, invertEdit, isIdle } from '../../../../web/document/change/edit.ts';
import { emptySite } from '../../../../web/document/opening.ts';
import { checkEdit } from '../../document/edits/check-edit.ts';
import { SMALL } from '../../document/small-site.ts';
import { anyDrawing, editOfDrawing } from './any-drawing.ts';

const METRIC: SiteFile = { ...emptySite(), units: 'm' };

test('whatever is drawn, in whatever order, leaves a valid site file, and undone gives back the same document', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(emptySite(), SMALL, METRIC),
      fc.array(anyDrawing, { maxLength: 5 }),
      (start, drawings) => {
        let file = start;
        const done: Edit[] = [];
        for (const drawing of drawings) {
          const edit = editOfDrawing(file, toSite(file), drawing);
          if (!edit || isIdle(edit)) continue;
          file = checkEdit(file, edit);
          done.push(edit);
        }
        const undone = done.reduceRight((now, edit) => applyEdit(now, invertEdit(edit)), file);
        expect(JSON.stringify(undone)).toBe(JSON.stringify(start));
      },
    ),
    { numRuns: 150 },
  );
});

test('of whatever is drawn a plan can be made', () => {
  fc.assert(
    fc.property(fc.array(anyDrawing, { minLength: 1, maxLength: 5 }), (drawings) => {
      let file = emptySite();
      for (const drawing of drawings) {
        const edit = editOfDrawing(file, toSite(file), drawing);
        if (edit) file = applyEdit(file, edit);
      }
      expect(plan(toSite(file)).runs).toHaveLength(file.chargers?.length ?? 0);
    }),
    { numRuns: 60 },
  );
});
