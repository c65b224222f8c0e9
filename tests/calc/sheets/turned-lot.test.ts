import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import type { DrawnItem } from '../../../calc/sheets/drawing/drawing.ts';
import { planDrawing } from '../../../calc/sheets/drawing/plan-drawing.ts';
import { alongGridlines, turnRemark } from '../../../calc/sheets/pdf/plans/strings/along-gridlines.ts';
import { settingOutSheet } from '../../../calc/sheets/site-work/setting-out-sheet.ts';
import { ELEMENT_LISTS } from '../../../routing/site/kinds/kinds.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { applyEdit } from '../../../web/document/change/edit.ts';
import { elementsOf } from '../../../web/document/change/element-lists.ts';
import { rotate } from '../../../web/document/edits/moving/move.ts';
import { SMALL } from '../../web/document/small-site.ts';

const LOT: SiteFile = {
  ...SMALL,
  gridlines: {
    x: [
      { label: '1', at: 0 },
      { label: '2', at: 27 },
    ],
    y: [{ label: 'A', at: 18 }],
  },
  asBuilt: { D1: { box: [4.6, 18, 12], checkedOn: '2026-05-01', checkedBy: 'JB' } },
};
const everything = ELEMENT_LISTS.flatMap((list) => elementsOf(LOT, list).map(({ id }) => ({ list, id })));
const TURNED = applyEdit(LOT, rotate(LOT, everything, [40, -7], 33)) as SiteFile;
const [before, after] = [toSite(LOT), toSite(TURNED)];
const texts = (items: readonly DrawnItem[], layer: string): string[] =>
  items.flatMap((item) => (item.kind === 'text' && item.layer === layer ? [item.text] : []));

describe('a lot that is turned with its gridlines', () => {
  test('has the same setting-out table, to the letter', () => {
    expect(after.gridlines.rotation).toBe(33);
    expect(settingOutSheet(after, plan(after))).toEqual(settingOutSheet(before, plan(before)));
  });

  test('has the same dimensions and gridlines in the plan drawing, which lies as the site does', () => {
    const drawn = [before, after].map((site) => planDrawing(site, plan(site)).items);
    const [was, is] = drawn as [readonly DrawnItem[], readonly DrawnItem[]];
    expect(texts(is, 'dimensions')).toEqual(texts(was, 'dimensions'));
    expect(texts(is, 'dimensions')).toContain(`9' 0"`);
    expect(texts(is, 'gridLabels')).toEqual(['1', '2', 'A']);
    // Each gridline runs the way that the lot was turned.
    const ways = is.flatMap((item) => {
      if (item.kind !== 'line' || item.layer !== 'gridlines') return [];
      const [a, b] = item.points;
      return [(((Math.atan2(b![1] - a![1], b![0] - a![0]) * 180) / Math.PI + 360) % 90) - 33];
    });
    expect(ways).toHaveLength(3);
    for (const off of ways) expect(Math.abs(off)).toBeLessThan(1e-4);
  });

  test('lies along its gridlines on the sheets of the set, as the lot did before it was turned', () => {
    const laid = alongGridlines(after, plan(after), []);
    expect(turnRemark(laid.frame)).toContain('turned by -33 degrees');
    const plain = plan(before);
    laid.site.drops.forEach(({ box }, i) => {
      for (const axis of [0, 1, 2] as const) expect(box[axis]).toBeCloseTo(before.drops[i]!.box[axis], 5);
    });
    // A file keeps millionths, so that a box on its raceway may come to lie a hair beside it: the ends are compared.
    laid.plan.runs.forEach(({ path, length }, i) => {
      const was = plain.runs[i]!;
      expect(length).toBeCloseTo(was.length!, 5);
      for (const end of [0, -1])
        for (const axis of [0, 1, 2] as const) expect(path.at(end)![axis]).toBeCloseTo(was.path.at(end)![axis], 5);
    });
  });

  test('and one that is not turned is laid as it is', () => {
    const planned = plan(before);
    expect(alongGridlines(before, planned, [])).toEqual({
      site: before,
      plan: planned,
      underlays: [],
      frame: null,
    });
    expect(alongGridlines(before, planned, []).site).toBe(before);
  });
});
