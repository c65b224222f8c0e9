import { join } from 'node:path';
import { writeSite } from '../../../routing/site/file/write.ts';
import { fromFeet } from '../../../routing/site/numbers/units.ts';
import type { Units } from '../../../routing/site/schema/vocabulary.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { plan } from '../../plan/plan.ts';
import { figureNotes, lookedWords, studySheet } from '../../sheets/cost/study-sheet.ts';
import { csv } from '../../sheets/csv.ts';
import { planDrawing } from '../../sheets/drawing/plan-drawing.ts';
import { waysReport } from '../../sheets/pdf/report/ways-report.ts';
import { svg } from '../../sheets/svg/svg.ts';
import { xlsx } from '../../sheets/xlsx.ts';
import { FIGURE_NAMES, FIGURES, type WayFigure, type WayFigures } from '../../study/figures.ts';
import type { Study, StudyWay } from '../../study/shape.ts';
import { shownFigure } from '../../study/shown-figure.ts';
import { STAYS, study } from '../../study/study.ts';
import { wayName } from '../../study/way-name.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import { sheetsNameOf } from '../file-name.ts';
import type { Machine } from '../machine.ts';
import { done, type VerbOutcome, wrong } from '../outcome.ts';
import { pricesIn } from '../prices.ts';
import { readSites } from '../sites.ts';
import { digestOf, filesOf, removeStale, studyIndex } from '../study-index.ts';
import { secondsIn, withTime } from '../time-limit.ts';
import { findingLine } from '../words/summary.ts';
import { textTable } from '../words/text-table.ts';

export interface StudyOptions {
  readonly json: boolean;
  /** Folder that the ways and their comparison are written to. */
  readonly out?: string;
  /** Writes over a study that stands there already. */
  readonly replace: boolean;
  readonly prices?: string;
  readonly stay?: string;
  readonly day?: string;
  /** At most about so long, in seconds. */
  readonly seconds?: string;
}

/**
 * `study FILE --out DIR`: the ways to do the job, each a site file and a plan in that folder, as each is done; then their
 * comparison as CSV, XLSX and PDF. Prints it too, or with `json` all figures as one line.
 */
export async function studyVerb(
  paths: readonly string[],
  options: StudyOptions,
  machine: Machine,
): Promise<VerbOutcome> {
  const [path, ...more] = paths;
  if (path === undefined || more.length > 0) return wrong(`study: name one site file, not ${paths.length}`);
  const stayHours = Number(options.stay ?? STAYS.usual);
  if (!(stayHours >= STAYS.least && stayHours <= STAYS.most))
    return wrong(`study --stay: expected hours from ${STAYS.least} to ${STAYS.most}, got "${options.stay}"`);
  const { out } = options;
  const name = sheetsNameOf(path);
  const at = (ending: string): string => join(out ?? '', `${name}.${ending}`);
  if (out !== undefined) {
    if (!options.replace && machine.isTaken(at('study.csv')))
      return wrong(`study --out: ${at('study.csv')} stands there already; --replace writes over it`);
    try {
      machine.makeFolder(out);
    } catch (error) {
      return wrong(`study --out: ${error instanceof Error ? error.message : String(error)}`);
    }
  }
  const seconds = secondsIn(options.seconds);
  if (seconds === 'wrong') return wrong(`study --seconds: expected a number over 0, got "${options.seconds}"`);
  const prices = pricesIn(options.prices, machine);
  if (!prices.ok) return wrong(prices.reason);
  const read = readSites([path], machine);
  if (!read.ok) return wrong(read.reason);
  const [{ file, site }] = read.sites as [(typeof read.sites)[number]];
  const { units } = site;
  if (options.day !== undefined && site.days.every(({ id }) => id !== options.day))
    return wrong(`study --day: ${path} has no charging day "${options.day}"`);
  const written: string[] = [];
  const earlier = out === undefined ? [] : filesOf(at('study.json'), machine);
  const fresh = new Map<string, string>();
  const index = (isWhole: boolean): void =>
    machine.write(
      at('study.json'),
      studyIndex([...fresh], isWhole ? [] : earlier.filter(({ name: one }) => !fresh.has(one))),
    );
  const write = (ending: string, content: string | Uint8Array): void => {
    machine.write(at(ending), content);
    fresh.set(`${name}.${ending}`, digestOf(content));
    if (!written.includes(at(ending))) written.push(at(ending));
  };
  let studied: ReturnType<typeof study>;
  try {
    studied = study(
      file,
      { prices: prices.list, stayHours, day: options.day ?? null },
      ({ says, done: ready, of }) => machine.progress(of > 0 ? `way ${ready + 1} of ${of}: ${says}` : says),
      // After a stop there are the ways that were done, and their comparison.
      (soFar) => {
        if (out === undefined) return;
        for (const way of soFar.ways) if (!written.includes(at(`${way.id}.site.json`))) writeWay(way, write);
        write('study.csv', csv(studySheet(soFar, units)));
        index(false);
      },
      withTime(seconds, machine),
    );
    machine.progress('');
    if (!studied.ok) return wrong(`${path}: ${studied.says}`);
    if (out !== undefined) {
      await writeComparison(studied.study, units, machine, write);
      removeStale(out, name, earlier, fresh, machine);
      index(true);
    }
  } catch (error) {
    machine.progress('');
    if (out === undefined) throw error;
    return wrong(`study --out: cannot be written: ${error instanceof Error ? error.message : String(error)}`);
  }
  if (options.json) return done(`${JSON.stringify(published(studied.study, prices.list.name, units, path))}\n`);
  return done(`${[textOf(studied.study, units), written.join('\n'), CAUTIONS].filter(Boolean).join('\n\n')}\n`);
}

type Write = (ending: string, content: string | Uint8Array) => void;

function writeWay({ id, file }: StudyWay, write: Write): void {
  const site = toSite(file);
  write(`${id}.site.json`, writeSite(file));
  write(`${id}.svg`, svg(planDrawing(site, plan(site))));
}

async function writeComparison(made: Study, units: Units, machine: Machine, write: Write): Promise<void> {
  const rows = studySheet(made, units);
  write('study.csv', csv(rows));
  write(
    'study.xlsx',
    await xlsx([
      { name: 'ways', rows },
      { name: 'figures', rows: figureNotes() },
    ]),
  );
  write('study.pdf', await waysReport(made, { fonts: await machine.fonts(), date: machine.today() }));
}

/** Columns of the table on a terminal; the files have all of them. */
const SHOWN: readonly (readonly [WayFigure, string])[] = [
  ['price', 'price'],
  ['served', 'stalls'],
  ['fullRate', 'full rate'],
  ['energy', 'a car gets'],
  ['trench', 'trench'],
  ['closed', 'closed'],
  ['days', 'work'],
  ['spareAmps', 'spare'],
  ['roomKva', 'room'],
  ['drop', 'drop'],
  ['fails', 'fail'],
];

function textOf(made: Study, units: Units): string {
  const { lot, ways, cannot, unbeaten } = made;
  const table = textTable(ways, [
    { head: 'way', text: ({ id }) => `${id}${unbeaten.has(id) ? ' *' : ''}` },
    ...SHOWN.map(([figure, head]) => ({
      head,
      text: ({ figures }: StudyWay) => shownFigure(figure, figures[figure], units),
      align: 'right' as const,
    })),
    { head: 'what it is', text: wayName },
  ]);
  const forced = ways.flatMap(({ id, forced: own }) =>
    own.map(({ finding, by }) => `${id}: ${findingLine(finding)}\n      forced: ${by}`),
  );
  return [
    `${lot}: ways to do the job`,
    table,
    '* nothing beats it on all counts.',
    ...(forced.length > 0 ? [forced.join('\n')] : []),
    ...(cannot.length > 0 ? [`Cannot be:\n${cannot.map(({ name, says }) => `  ${name}: ${says}`).join('\n')}`] : []),
    lookedWords(made).join('\n'),
  ].join('\n\n');
}

function published(made: Study, prices: string, units: Units, path: string): object {
  const figuresIn = (figures: WayFigures): object =>
    Object.fromEntries(
      FIGURE_NAMES.map((figure) => {
        const value = figures[figure];
        return [figure, value !== null && FIGURES[figure].unit === 'ft' ? fromFeet(value, units) : value];
      }),
    );
  return {
    format: 'overrow/study',
    version: 1,
    file: path,
    site: made.lot,
    units,
    prices,
    stalls: made.stalls,
    looked: made.looked,
    leftOut: made.leftOut,
    assumes: made.assumes,
    ways: made.ways.map(({ id, name, also, mount, supply, amps, says, forced, figures }) => ({
      id,
      name,
      also,
      mount,
      supply,
      amps,
      unbeaten: made.unbeaten.has(id),
      figures: figuresIn(figures),
      says,
      forced: forced.map(({ finding, by }) => ({
        rule: finding.rule,
        about: finding.about,
        says: finding.says,
        by,
      })),
    })),
    cannot: made.cannot,
  };
}
