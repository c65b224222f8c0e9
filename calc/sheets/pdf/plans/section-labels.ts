import type { Site } from '../../../../routing/site/site.ts';
import { type SheetNumbers, sectionKey } from '../kit/draft.ts';
import { BLACK } from '../kit/ink.ts';
import type { LabelWish } from '../kit/labels/best-label-place.ts';
import { placesAround } from '../kit/labels/label-places.ts';
import { shows, type View } from '../kit/view/view.ts';

/** Reach of the head of a cut, feet. */
const CUT_HEAD = 1.8;

/** Titles of the sections that are cut in the view, beside the one end or the other, under their number and sheet. */
export function sectionWishes(view: View, site: Site, numbers: SheetNumbers = new Map()): LabelWish[] {
  return site.sections.flatMap((section): LabelWish[] => {
    const { name, from, to } = section;
    const called = numbers.get(sectionKey(section));
    const ends = [to, from].filter((end) => shows(view.window, end));
    if (ends.length === 0) return [];
    const half = CUT_HEAD * view.perFoot;
    return [
      {
        layer: 'sections',
        lines: [...(called === undefined ? [] : [{ text: called, weight: 'bold' as const }]), { text: name }],
        size: 'small',
        colour: BLACK,
        places: (size) => ends.flatMap((end) => [...placesAround(view.at(end), half, size, true)]),
      },
    ];
  });
}
