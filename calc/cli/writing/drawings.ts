import { didYouMean } from '../../../routing/site/file/nearest-word.ts';
import { SET_PURPOSES, type SetPurpose, SHEET_PARTS, type SheetPart } from '../../../routing/site/schema/vocabulary.ts';
import type { Drawings, Site } from '../../../routing/site/site.ts';

/** What of a drawing set was asked for on the command line, or why it could not be. */
type DrawingsWished = { readonly ok: true; readonly wish: Drawings } | { readonly ok: false; readonly reason: string };

/** Reads `--set PURPOSE` and `--sheets LIST`: a purpose alone lets go of the parts that a site keeps. */
export function drawingsWished({ set, sheets }: { readonly set?: string; readonly sheets?: string }): DrawingsWished {
  if (set !== undefined && !isPurpose(set))
    return {
      ok: false,
      reason: `--set: no set is for "${set}"; the purposes are ${SET_PURPOSES.join(', ')}${didYouMean(set, SET_PURPOSES)}`,
    };
  const parts = sheets?.split(',').map((part) => part.trim());
  const stray = parts?.find((part) => !isPart(part));
  if (stray !== undefined)
    return {
      ok: false,
      reason: `--sheets: no part of a set is "${stray}"; the parts are ${SHEET_PARTS.join(', ')}${didYouMean(stray, SHEET_PARTS)}`,
    };
  return {
    ok: true,
    wish: { ...(set !== undefined && { purpose: set }), ...(parts && { sheets: parts.filter(isPart) }) },
  };
}

const isPurpose = (word: string): word is SetPurpose => (SET_PURPOSES as readonly string[]).includes(word);
const isPart = (word: string): word is SheetPart => (SHEET_PARTS as readonly string[]).includes(word);

/** A site whose set is as it was asked for; the site itself where nothing was. */
export function withDrawings(site: Site, wish: Drawings): Site {
  if (wish.purpose === undefined && wish.sheets === undefined) return site;
  const { sheets: _, ...kept } = site.drawings;
  return { ...site, drawings: { ...(wish.purpose === undefined ? site.drawings : kept), ...wish } };
}
