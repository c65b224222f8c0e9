import { expect, test } from 'vitest';
import { sectionDrawing } from '../../../../calc/sheets/drawing/section-drawing.ts';
import { sectionOf } from '../../../../calc/space/section/section.ts';
import { sectionsOf } from '../../../../calc/space/section/typical.ts';
import { plannedSample } from '../planned-samples.ts';
import { setOf } from './drawing-set.ts';
import { readPdf } from './read-pdf.ts';

/** What stands at which height: `7' 0", SB1`. Dimensions go by the room that they have at the scale of the sheet. */
const LEADER = /^\d+' [\d /]+", /;

test.each(['library-lot', 'fleet-yard', 'library-pedestals'])(
  'what stands at which height in each section of %s is written on its sheet, on both papers',
  async (name) => {
    const planned = plannedSample(name);
    const { site, planned: plan } = planned;
    const wanted = new Map<string, number>();
    for (const cut of sectionsOf(site, plan)) {
      const section = sectionOf(site, plan, cut);
      if (!section) continue;
      for (const item of sectionDrawing(section, site.units, 0.5, cut.name).items)
        if (item.kind === 'text' && LEADER.test(item.text)) wanted.set(item.text, (wanted.get(item.text) ?? 0) + 1);
    }
    expect(wanted.size).toBeGreaterThan(3);
    for (const paper of ['ANSI D', 'tabloid'] as const) {
      const { pages } = await readPdf(await setOf(planned, { paper }));
      const texts = pages.filter(({ label }) => label.startsWith('E-3')).flatMap((page) => page.texts);
      const missing = [...wanted].filter(([words, times]) => texts.filter(({ text }) => text === words).length < times);
      expect(missing).toEqual([]);
    }
  },
);
