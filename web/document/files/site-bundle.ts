import * as v from 'valibot';
import { readSite } from '../../../routing/site/file/read.ts';
import { writeSite } from '../../../routing/site/file/write.ts';
import { type History, pastFits } from '../change/history.ts';
import { parseEdit } from '../change/parse-edit.ts';

const FORMAT = 'overrow/kept-sites';
/** Past this a file is not one that this page has written. */
const MOST_SITES = 10_000;

/** One site of a file of kept sites. */
export interface BundledSite {
  readonly history: History;
  readonly at: number;
  readonly edits: number;
}

const schema = v.object({
  format: v.literal(FORMAT),
  version: v.literal(1),
  sites: v.pipe(
    v.array(
      v.object({
        at: v.fallback(v.pipe(v.number(), v.minValue(0), v.maxValue(8.64e15)), 0),
        edits: v.fallback(v.pipe(v.number(), v.integer(), v.minValue(0)), 0),
        text: v.string(),
        done: v.fallback(v.array(v.unknown()), []),
        undone: v.fallback(v.array(v.unknown()), []),
      }),
    ),
    v.maxLength(MOST_SITES),
  ),
});

/** The text of one file that holds many sites with their pasts. */
export const writeSiteBundle = (sites: readonly BundledSite[], writtenOn: string): string =>
  `${JSON.stringify({
    format: FORMAT,
    version: 1,
    writtenOn,
    sites: sites.map(({ history, at, edits }) => ({
      at,
      edits,
      text: writeSite(history.file),
      done: history.done,
      undone: history.undone,
    })),
  })}\n`;

/** Whether a text begins as a file of kept sites does. */
export const isSiteBundle = (text: string): boolean =>
  /^\s*\{\s*"format"\s*:\s*"overrow\/kept-sites"/.test(text.slice(0, 200));

export type SiteBundleRead =
  | {
      readonly ok: true;
      readonly sites: readonly BundledSite[];
      /** Places of those that are no valid sites, from 1, with the first fault of each. */
      readonly faults: readonly string[];
    }
  | { readonly ok: false; readonly says: string };

/** The sites of a file of kept sites. What in it is no valid site is left out and told; a past that does not fit goes. */
export function readSiteBundle(text: string): SiteBundleRead {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return { ok: false, says: 'it is no file of kept sites, or was cut short' };
  }
  const parsed = v.safeParse(schema, value);
  if (!parsed.success) return { ok: false, says: 'it is no file of kept sites of this version' };
  const sites: BundledSite[] = [];
  const faults: string[] = [];
  for (const [i, { text: siteText, done, undone, at, edits }] of parsed.output.sites.entries()) {
    const read = readSite(siteText);
    if (!read.ok) {
      faults.push(`site ${i + 1}: ${read.errors[0]?.place || 'the file'}: ${read.errors[0]?.says}`);
      continue;
    }
    const [past, future] = [done.map(parseEdit), undone.map(parseEdit)];
    const known = [...past, ...future].every((edit) => edit !== null);
    const whole = { file: read.file, done: past, undone: future } as History;
    const history = known && pastFits(whole) ? whole : { file: read.file, done: [], undone: [] };
    sites.push({ history, at, edits });
  }
  return { ok: true, sites, faults };
}
