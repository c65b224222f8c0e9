import { alternativeOf } from '../../plan/compared/alternative.ts';
import { publishedPlan } from '../../plan/write-plan.ts';
import type { PriceList } from '../../prices/price-list.ts';
import { SHEET_FILES } from '../../sheets/every-sheet.ts';
import type { Machine } from '../machine.ts';
import { done, partly, type VerbOutcome, wrong } from '../outcome.ts';
import { pricesIn } from '../prices.ts';
import { readNamedSite, reasonsOf, type SiteOfFile, unreadLine } from '../sites.ts';
import { standingLine, summary } from '../words/summary.ts';
import { drawingsWished, withDrawings } from '../writing/drawings.ts';
import { sheetsNamed } from '../writing/sheets-named.ts';
import { writeSheets } from '../writing/write-sheets.ts';

export interface PlanOptions {
  readonly json: boolean;
  /** With `json`: a file that cannot be read has a line of its own in its place, and the rest are planned. */
  readonly keepGoing: boolean;
  /** Findings one by one, and not those alike in one line. */
  readonly all: boolean;
  /** Only how each site stands. */
  readonly quiet: boolean;
  /** Folder to write every sheet of every file to. */
  readonly out?: string;
  /** With `out`: endings of the sheets to be written, with commas between them. */
  readonly only?: string;
  readonly prices?: string;
  /** With `out`: what the drawing set is for, in place of what the site says. */
  readonly set?: string;
  /** With `out`: parts of the drawing set, with commas between them, in place of what the site or its purpose has. */
  readonly sheets?: string;
  /** With `out`: address of the page that codes on paper open. */
  readonly page?: string;
  /** Day of the bid. */
  readonly bidDay?: string | undefined;
  /** File of what suppliers' words mean. */
  readonly words?: string;
}

/**
 * `plan FILE...`: a readable summary of each (a file that cannot be read is told, and the others are planned); with `json` each file's plan as one line of JSON, in order; with `out`
 * every sheet of each in that folder, named after the file, and the names of what was written.
 */
export async function planVerb(paths: readonly string[], options: PlanOptions, machine: Machine): Promise<VerbOutcome> {
  if (paths.length === 0) return wrong('plan: name one site file or more');
  if (options.json && options.out !== undefined) return wrong('plan: --json prints, --out writes; choose one');
  if (options.keepGoing && !options.json) return wrong('plan --keep-going: goes with --json');
  if (options.only !== undefined && options.out === undefined) return wrong('plan --only: goes with --out');
  const sheets = sheetsNamed(options.only, SHEET_FILES);
  if (!sheets.ok) return wrong(`plan ${sheets.reason}`);
  if ((options.set ?? options.sheets) !== undefined && options.out === undefined)
    return wrong('plan --set, --sheets: go with --out');
  if (options.page !== undefined) {
    if (options.out === undefined) return wrong('plan --page: goes with --out');
    if (!isPage(options.page)) return wrong(`plan --page: "${options.page}" is no address such as https://HOST/PATH/`);
  }
  const drawings = drawingsWished(options);
  if (!drawings.ok) return wrong(`plan ${drawings.reason}`);
  const prices = pricesIn(options.prices, machine, options);
  if (!prices.ok) return wrong(prices.reason);
  const reads = paths.map((path) => readNamedSite(path, machine));
  const sites = reads.flatMap((read) => (read.ok ? { ...read, site: withDrawings(read.site, drawings.wish) } : []));
  // A program that reads lines of JSON tells them by their number: with the bad ones left out it would take one for another.
  if (sites.length === 0 || (sites.length < reads.length && options.json))
    if (!options.keepGoing) return wrong(reasonsOf(reads));
  const some = ({ status, out, err }: VerbOutcome): VerbOutcome =>
    sites.length < reads.length
      ? partly(out, [err.trimEnd(), reasonsOf(reads)].filter(Boolean).join('\n'))
      : { status, out, err };
  if (options.out !== undefined)
    return some(
      await writeSheets(
        { sites, files: sheets.files, prices: prices.list, folder: options.out, page: options.page },
        machine,
      ),
    );
  if (options.json) {
    const lines = reads.map((read) => `${read.ok ? JSON.stringify(planned(read, prices.list)) : unreadLine(read)}\n`);
    return sites.length < reads.length ? partly(lines.join(''), reasonsOf(reads)) : done(lines.join(''));
  }
  const told = sites.map((named) => {
    const alternative = alternativeOf(named.path, named.site, prices.list);
    return options.quiet ? `${standingLine(named.path, alternative.plan)}\n` : summary(alternative, options.all);
  });
  return some(done(told.join(options.quiet ? '' : '\n')));
}

/** Longest address of a page: a code with a card behind it is still read off paper. */
const MAX_PAGE = 200;

function isPage(text: string): boolean {
  if (text.length > MAX_PAGE || !URL.canParse(text)) return false;
  const { protocol, hash } = new URL(text);
  return (protocol === 'https:' || protocol === 'http:') && hash === '';
}

function planned(named: SiteOfFile, prices: PriceList): object {
  const { plan, site } = alternativeOf(named.path, named.site, prices);
  return publishedPlan(plan, site);
}
