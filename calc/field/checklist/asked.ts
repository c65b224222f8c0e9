import type { ElementList } from '../../../routing/site/kinds/kinds.ts';
import type { RuleWord } from '../../../routing/site/rules/rule-words.ts';
import type { Mark, Point3 } from '../../../routing/site/site.ts';

/** What a line of the checklist goes by: a value, a place, a step that is done, or something that is looked at. */
export type Expected =
  /** In feet; either end may be open. `drawn` is what the plan has. */
  | { readonly kind: 'length'; readonly least?: number; readonly most?: number; readonly drawn?: number }
  | {
      readonly kind: 'number';
      readonly least?: number;
      readonly most?: number;
      readonly drawn?: number;
      /** As it stands after the number: "A", "°". */
      readonly unit: string;
    }
  /** Within so many feet of where it is drawn. */
  | { readonly kind: 'place'; readonly at: Point3; readonly within: number }
  | { readonly kind: 'step' }
  /** As the words say, or otherwise. */
  | { readonly kind: 'seen'; readonly words: string };

/** Where what was recorded is found among the marks. */
export type MarkAddress = Pick<Mark, 'what' | 'part'>;

/** A line of the checklist before anything is recorded for it. */
export interface AskedLine {
  /** The element that it is of. */
  readonly of: string;
  readonly list: ElementList;
  readonly what: string;
  readonly where: string;
  /** The check of the plan that it goes by; null where it is a step of the work alone. */
  readonly rule: RuleWord | null;
  /** What it goes by where no check of the plan does: a section, or the drawing. */
  readonly source?: string;
  readonly expected: Expected;
  /** The mark that it is recorded by. */
  readonly mark: MarkAddress;
}

/** The mark of a value that is written down for a line. */
export const checked = (part: string): MarkAddress => ({ what: 'checked', part });
