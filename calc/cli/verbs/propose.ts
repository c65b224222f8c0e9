import { resolve } from 'node:path';
import { addTo } from '../../../routing/lists/grouping.ts';
import { writeSite } from '../../../routing/site/file/write.ts';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import { METALS } from '../../../routing/site/schema/vocabulary.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { plan } from '../../plan/plan.ts';
import { type Outlook, outlookOf, outlookWords } from '../../propose/outlook.ts';
import { readLoad } from '../../propose/panels/read-load.ts';
import { type Proposal, propose, WHATS, type What } from '../../propose/propose.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import type { Machine } from '../machine.ts';
import { done, type VerbOutcome, wrong } from '../outcome.ts';
import { pricesIn } from '../prices.ts';
import { readSites } from '../sites.ts';
import { secondsIn } from '../time-limit.ts';
import { findingLine } from '../words/summary.ts';
import { anewPart, MEND, mendPart, type PartOptions, partAsked, withLater } from './propose-part.ts';
import { proposedPartText as partText } from './proposed-part-text.ts';

export interface ProposeOptions extends PartOptions {
  readonly json: boolean;
  readonly what?: string;
  readonly out?: string;
  /** Writes over what stands at `out` already. */
  readonly replace: boolean;
  readonly cords?: string;
  /** At most so long, in seconds. */
  readonly seconds?: string;
  /** Load management, in words. */
  readonly load?: string;
  /** Metal of new feeders. */
  readonly feeders?: string;
  readonly prices?: string;
}

/** More cords than these do not hang from one box. Common practice, no source. */
const MOST_CORDS = 6;

/**
 * `propose FILE --what drops|raceways|equipment|all --out FILE`: writes the site with what is proposed drawn in, and says
 * what that is, how near it is to the best that can be, and what the plan finds before and after. The file that is read
 * is written over only where `--out` names it.
 */
export function proposeVerb(paths: readonly string[], options: ProposeOptions, machine: Machine): VerbOutcome {
  const [path, ...more] = paths;
  if (path === undefined || more.length > 0) return wrong(`propose: name one site file, not ${paths.length}`);
  const what = WHATS.find((each) => each === options.what);
  const isMend = options.what === MEND;
  if (what === undefined && !isMend)
    return wrong(
      `propose --what: expected ${[...WHATS, MEND].join(', ')}, ${options.what === undefined ? 'none was given' : `got "${options.what}"`}`,
    );
  if (options.out === undefined) return wrong('propose --out: name the file that the proposal is written to');
  if (!options.replace && machine.isTaken(options.out))
    return wrong(`propose --out: ${options.out} stands there already; --replace writes over it`);
  const cordsADrop = Number(options.cords ?? 1);
  if (!(Number.isInteger(cordsADrop) && cordsADrop >= 1 && cordsADrop <= MOST_CORDS))
    return wrong(`propose --cords: expected a whole number from 1 to ${MOST_CORDS}, got "${options.cords}"`);
  const load = readLoad(options.load ?? 'full');
  if (!load.ok) return wrong(`propose --load: ${load.says}`);
  const feederMetal = METALS.find((metal) => metal === options.feeders);
  if (options.feeders !== undefined && feederMetal === undefined)
    return wrong(`propose --feeders: expected ${METALS.join(' or ')}, got "${options.feeders}"`);
  const seconds = secondsIn(options.seconds);
  if (seconds === 'wrong') return wrong(`propose --seconds: expected a number over 0, got "${options.seconds}"`);
  const prices = pricesIn(options.prices, machine);
  if (!prices.ok) return wrong(prices.reason);
  const read = readSites([path], machine);
  if (!read.ok) return wrong(read.reason);
  const [{ file: drawn, site }] = read.sites as [(typeof read.sites)[number]];
  const phased = withLater(drawn, options);
  if (!phased.ok) return wrong(phased.reason);
  const { file } = phased;
  const job = { file, path, out: options.out, json: options.json, prices: prices.list, cordsADrop };
  const asked = partAsked(options);
  if (!asked.ok) return wrong(asked.reason);
  if (what === undefined) return mendPart(job, options.before, machine, machine.mayGoOn(seconds));
  if (asked.part !== null) return anewPart(job, what, asked.part, options.keep, machine, machine.mayGoOn(seconds));
  if (load.load.kind === 'day' && (site.days.length === 0 || what !== 'all'))
    return wrong(
      what === 'all'
        ? 'propose --load day: the file has no charging day; say energy and hours, such as 20kWh/8h'
        : 'propose --load day: a day is worked with all of the lot drawn: --what all',
    );
  const mayGoOn = machine.mayGoOn(seconds);
  const proposal = propose(
    file,
    { what, cordsADrop, prices: prices.list, load: load.load, ...(feederMetal && { feederMetal }) },
    ({ what: part, done: so, of }) => machine.progress(`propose: ${part}${of > 1 ? `, ${so} of ${of}` : ''}`),
    () => {},
    mayGoOn,
  );
  machine.progress('');
  const isWhole = mayGoOn();
  try {
    machine.write(options.out, writeSite(proposal.file));
  } catch (error) {
    return wrong(`${options.out}: cannot be written: ${error instanceof Error ? error.message : String(error)}`);
  }
  const proposed = toSite(proposal.file);
  const [before, after] = [plan(site).findings, plan(proposed).findings];
  const outlook = outlookOf(site, proposed, prices.list);
  if (options.json) return done(`${JSON.stringify(written(what, options.out, proposal, before, after, outlook))}\n`);
  return done(
    `${[
      `${site.name}: ${what} proposed, written to ${options.out}${resolve(options.out) === resolve(path) ? ' (over the file that was read)' : ''}`,
      ...proposal.parts.map(partText),
      isWhole ? '' : 'It was ended early: this is the best whole proposal up to then.',
      `Findings before: ${counts(before)}. After: ${counts(after)}.`,
      worstOfEach(after),
      ...(outlook === null ? [] : outlookWords(outlook, (amount) => `$${amount.toFixed(2)}`)),
      CAUTIONS,
    ]
      .filter(Boolean)
      .join('\n\n')}\n`,
  );
}

/** What is left, the worst of each rule with how many more there are of it. */
function worstOfEach(findings: readonly Finding[]): string {
  const byRule = new Map<string, Finding[]>();
  for (const finding of findings) {
    if (finding.severity === 'note') continue;
    const key = `${finding.severity} ${finding.rule}`;
    addTo(byRule, key, finding);
  }
  return [...byRule.values()]
    .map((own) => findingLine(own[0]!) + (own.length > 1 ? `\n      and ${own.length - 1} more of the kind` : ''))
    .join('\n');
}

const count = (findings: readonly Finding[], severity: Finding['severity']): number =>
  findings.filter((finding) => finding.severity === severity).length;

const counts = (findings: readonly Finding[]): string =>
  `${count(findings, 'fail')} fail, ${count(findings, 'warn')} to check`;

const written = (
  what: What,
  out: string,
  { parts }: Proposal,
  before: readonly Finding[],
  after: readonly Finding[],
  outlook: Outlook | null,
): object => ({
  format: 'overrow/proposal',
  version: 1,
  what,
  out,
  parts,
  findings: {
    before: { fail: count(before, 'fail'), warn: count(before, 'warn') },
    after: { fail: count(after, 'fail'), warn: count(after, 'warn') },
  },
  ...(outlook !== null && { price: { before: outlook.before, after: outlook.price }, days: outlook.days }),
});
