import { writeSite } from '../../../routing/site/file/write.ts';
import { ELEMENT_LISTS } from '../../../routing/site/kinds/kinds.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import type { PriceList } from '../../prices/price-list.ts';
import { mend } from '../../propose/anew/mend.ts';
import { brokeWords, mendWords } from '../../propose/anew/mend-words.ts';
import { ANEW_WHATS, proposeAnew } from '../../propose/anew/propose-anew.ts';
import { type Asked, scopeOf } from '../../propose/anew/scope.ts';
import type { What } from '../../propose/propose.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import type { Machine } from '../machine.ts';
import { done, type VerbOutcome, wrong } from '../outcome.ts';
import { readSites } from '../sites.ts';
import { proposedPartText } from './proposed-part-text.ts';

/** The options of `propose` that ask for a part of a lot. */
export interface PartOptions {
  readonly row?: string;
  readonly panel?: string;
  /** Ids with commas between them. */
  readonly only?: string;
  readonly keep?: string;
  /** An older file of the same lot. */
  readonly before?: string;
  /** Ids or labels of stalls. */
  readonly later?: string;
  readonly what?: string;
}

/** The word of `--what` that mends what fails. */
export const MEND = 'mend';

/** A file that a part of is proposed, and what it is written to. */
interface Job {
  readonly file: SiteFile;
  readonly path: string;
  readonly out: string;
  readonly json: boolean;
  readonly prices: PriceList;
  readonly cordsADrop: number;
}

type PartAsked = { readonly ok: true; readonly part: Asked | null } | { readonly ok: false; readonly reason: string };

const idsIn = (text: string): readonly string[] =>
  text
    .split(',')
    .map((id) => id.trim())
    .filter(Boolean);

/** Which part of a lot is asked for; null for all of it. */
export function partAsked({ row, panel, only, keep, before, what }: PartOptions): PartAsked {
  const parts: Asked[] = [
    ...(row === undefined ? [] : [{ kind: 'row', of: row } as const]),
    ...(panel === undefined ? [] : [{ kind: 'panel', id: panel } as const]),
    ...(only === undefined ? [] : [{ kind: 'only', ids: idsIn(only) } as const]),
  ];
  const [part = null, another] = parts;
  if (another) return { ok: false, reason: 'propose: one of --row, --panel and --only at a time' };
  if (what === MEND && (part !== null || keep !== undefined))
    return {
      ok: false,
      reason: 'propose --what mend: what is broken is found by itself, without --row, --panel, --only, --keep',
    };
  if (what !== MEND && before !== undefined) return { ok: false, reason: 'propose --before: goes with --what mend' };
  if (part === null && keep !== undefined)
    return { ok: false, reason: 'propose --keep: what stands stays without it; it goes with --row, --panel or --only' };
  return { ok: true, part };
}

type Phased = { readonly ok: true; readonly file: SiteFile } | { readonly ok: false; readonly reason: string };

/** The phase that stalls are for which are named as later ones. */
const LATER = 2;

/** A file in which some stalls, by id or label, get their chargers later. */
export function withLater(file: SiteFile, { later, what }: PartOptions): Phased {
  if (later === undefined) return { ok: true, file };
  if (what !== 'all')
    return { ok: false, reason: 'propose --later: what is laid now for later is decided with all: --what all' };
  const { stalls = [] } = file;
  const named = idsIn(later);
  const stray = named.find((one) => stalls.every(({ id, label }) => id !== one && label !== one));
  if (stray !== undefined) return { ok: false, reason: `propose --later: no stall is called "${stray}"` };
  const isLater = ({ id, label }: (typeof stalls)[number]): boolean =>
    named.includes(id) || (label !== undefined && named.includes(label));
  return {
    ok: true,
    file: { ...file, stalls: stalls.map((stall) => (isLater(stall) ? { ...stall, phase: LATER } : stall)) },
  };
}

/** `propose --what drops|raceways|all` with `--row`, `--panel` or `--only`. */
export function anewPart(
  { file, path, out, json, prices, cordsADrop }: Job,
  what: What,
  asked: Asked,
  kept: string | undefined,
  machine: Machine,
  mayGoOn: () => boolean,
): VerbOutcome {
  const own = ANEW_WHATS.find((each) => each === what);
  if (own === undefined)
    return wrong(
      `propose --what ${what}: panels stay where a part of a lot is proposed anew; ${ANEW_WHATS.join(', ')} may be`,
    );
  const scoped = scopeOf(file, asked);
  if (!scoped.ok) return wrong(`propose --${asked.kind}: ${scoped.says}`);
  const keep = idsIn(kept ?? '');
  const known = new Set(ELEMENT_LISTS.flatMap((list) => (file[list] ?? []).map(({ id }) => id)));
  const stray = keep.find((id) => !known.has(id));
  if (stray !== undefined) return wrong(`propose --keep: no element is called "${stray}"`);
  const anew = proposeAnew(
    file,
    { what: own, scope: scoped.scope, keep: new Set(keep), cordsADrop, prices },
    (part, of) => machine.progress(`propose: raceways${of > 1 ? `, ${part} of ${of}` : ''}`),
    mayGoOn,
  );
  machine.progress('');
  const fault = written(out, anew.file, machine);
  if (fault !== null) return fault;
  const { parts, before, after } = anew;
  if (json)
    return done(
      `${JSON.stringify({ format: 'overrow/proposal', version: 1, what, out, chargers: [...scoped.scope.chargers], parts, before, after })}\n`,
    );
  return done(
    `${[
      `${file.name}: ${what} proposed anew for ${scoped.scope.stalls.size} of its stalls, written to ${out}; all else of ${path} is as it was`,
      ...parts.map(proposedPartText),
      `Findings that fail: ${before.fails} before, ${after.fails} after. Bid: ${dollars(before.price)} before, ${dollars(after.price)} after.`,
      CAUTIONS,
    ].join('\n\n')}\n`,
  );
}

/** `propose --what mend`. */
export function mendPart(
  { file, path, out, json, prices }: Job,
  before: string | undefined,
  machine: Machine,
  mayGoOn: () => boolean,
): VerbOutcome {
  let older: SiteFile | null = null;
  if (before !== undefined) {
    const read = readSites([before], machine);
    if (!read.ok) return wrong(`propose --before: ${read.reason}`);
    older = read.sites[0]!.file;
  }
  const made = mend(file, older, prices, (part, of) => machine.progress(`mend: ${part} of ${of}`), mayGoOn);
  machine.progress('');
  const mended = made?.mended ?? null;
  const fault = written(out, mended?.file ?? file, machine);
  if (fault !== null) return fault;
  if (json)
    return done(
      `${JSON.stringify({
        format: 'overrow/mend',
        version: 1,
        out,
        broken: made?.broken ?? { findings: [], chargers: [] },
        left: made?.left ?? null,
        mended: mended && { fails: mended.fails, price: mended.price, says: mended.says },
      })}\n`,
    );
  return done(
    `${[
      `${file.name}: ${made === null ? `nothing to mend; ${path} is written to ${out} as it is` : mended === null ? `no mend was found; ${path} is written to ${out} as it is` : `mended, written to ${out}`}`,
      ...(made === null
        ? []
        : [brokeWords(made.broken, Number.POSITIVE_INFINITY).join('\n'), mendWords(made, dollars)]),
      CAUTIONS,
    ].join('\n\n')}\n`,
  );
}

const dollars = (amount: number): string => `$${amount.toFixed(2)}`;

function written(out: string, file: SiteFile, machine: Machine): VerbOutcome | null {
  try {
    machine.write(out, writeSite(file));
    return null;
  } catch (error) {
    return wrong(`${out}: cannot be written: ${error instanceof Error ? error.message : String(error)}`);
  }
}
