import { expect } from 'vitest';
import { readSiteValue } from '../../../../routing/site/file/read.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { applyEdit, type Edit, invertEdit } from '../../../../web/document/change/edit.ts';
import { parseEdit } from '../../../../web/document/change/parse-edit.ts';

/** A value's text with its fields in their order, which `toEqual` does not look at. */
const textOf = (value: unknown): string => JSON.stringify(value, null, 1);

/**
 * Does the four things that hold for every edit of a valid file: it applies and leaves a valid file, its inverse gives
 * back the file to the letter, it survives JSON, and what was replayed from JSON does the same. Gives the file after it.
 */
export function checkEdit(before: SiteFile, edit: Edit): SiteFile {
  const was = textOf(before);
  const after = applyEdit(before, edit);
  expect(readSiteValue(after)).toEqual({ ok: true, file: after });
  expect(textOf(before)).toBe(was);
  expect(textOf(applyEdit(after, invertEdit(edit)))).toBe(was);
  expect(textOf(applyEdit(before, invertEdit(invertEdit(edit))))).toBe(textOf(after));
  const replayed = parseEdit(JSON.parse(JSON.stringify(edit)));
  expect(replayed).toEqual(edit);
  expect(textOf(applyEdit(before, replayed!))).toBe(textOf(after));
  return after;
}
