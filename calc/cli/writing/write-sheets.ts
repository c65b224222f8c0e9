import { basename, join } from 'node:path';
import type { Site } from '../../../routing/site/site.ts';
import { alternativeOf } from '../../plan/compared/alternative.ts';
import type { Alternative } from '../../plan/compared/comparison.ts';
import type { PriceList } from '../../prices/price-list.ts';
import type { SheetFile } from '../../sheets/every-sheet.ts';
import { type SheetEnding, TABLE_NAMES } from '../../sheets/sheet-names.ts';
import { sheetsNameOf } from '../file-name.ts';
import type { Machine } from '../machine.ts';
import { done, type VerbOutcome, wrong } from '../outcome.ts';
import type { SiteOfFile } from '../sites.ts';
import { alone } from './crew.ts';
import { underlaysBeside } from './underlays.ts';

/** What sheets are written of, and to where. */
export interface SheetsWished {
  readonly sites: readonly SiteOfFile[];
  readonly files: readonly SheetFile[];
  readonly prices: PriceList;
  readonly folder: string;
  /** Address of the page that codes on paper open. */
  readonly page: string | undefined;
}

/** One sheet of one site, by their places in the lists. */
interface Piece {
  readonly of: number;
  readonly sheet: number;
}

interface Written extends Piece {
  /** Where it was written; null where the site has none of it. */
  readonly path: string | null;
  readonly told: readonly string[];
  readonly fault?: string;
}

/**
 * Writes sheets, each whole or not at all, and tells their names in the order of the lists. Of a large lot two threads
 * take one after another from either end.
 */
export async function writeSheets(wished: SheetsWished, machine: Machine): Promise<VerbOutcome> {
  const { sites, files, folder } = wished;
  const names = sites.map(({ path }) => sheetsNameOf(path));
  const twice = names.find((name, i) => names.indexOf(name) !== i);
  if (twice !== undefined)
    return wrong(`plan --out: two of the files are named ${twice}; their sheets would overwrite one another`);
  try {
    machine.makeFolder(folder);
  } catch (error) {
    return wrong(`plan --out: ${error instanceof Error ? error.message : String(error)}`);
  }
  // Asked once, before the second thread is there: a set that is written about midnight has one date.
  const date = machine.today();
  const groups = sites.flatMap((_, of) => groupsOf(files).map((group) => group.map((sheet): Piece => ({ of, sheet }))));
  const crew = machine.crew?.(groups.length, sites.some(isLargeLot)) ?? alone(groups.length);
  const planned = new Map<number, Alternative>();
  const alternative = (of: number): Alternative => {
    const known = planned.get(of);
    if (known) return known;
    const { path, site } = sites[of]!;
    const made = { ...alternativeOf(path, site, wished.prices), name: basename(path) };
    // Of several sites one at a time is in hand.
    planned.clear();
    planned.set(of, made);
    return made;
  };
  const all = sites.length * files.length;
  for (let at = crew.next(); at !== null; at = crew.next()) {
    const before = groups.slice(0, at).reduce((sum, group) => sum + group.length, 0);
    for (const [i, piece] of groups[at]!.entries()) {
      machine.progress(`${names[piece.of]}: ${files[piece.sheet]!.says} (${before + i + 1} of ${all})`);
      const written = await writeOne(piece, names[piece.of]!, alternative(piece.of), date, wished, machine);
      crew.done(written);
      if (written.fault === undefined) continue;
      crew.stop();
      break;
    }
  }
  const pieces = (await crew.rest()) as readonly Written[];
  machine.progress('');
  const inOrder = [...pieces].sort((a, b) => a.of - b.of || a.sheet - b.sheet);
  const fault = inOrder.find((piece) => piece.fault !== undefined)?.fault;
  if (fault !== undefined) return wrong(fault);
  const told = new Set(inOrder.flatMap((piece) => piece.told));
  const paths = inOrder.flatMap(({ path }) => path ?? []);
  return { ...done(`${paths.join('\n')}\n`), err: [...told].map((words) => `${words}\n`).join('') };
}

async function writeOne(
  piece: Piece,
  name: string,
  planned: Alternative,
  date: string,
  { sites, files, folder, page }: SheetsWished,
  machine: Machine,
): Promise<Written> {
  const { path: from, site } = sites[piece.of]!;
  const { ending, write } = files[piece.sheet]!;
  const told: string[] = [];
  const content = await write(planned, {
    fonts: machine.fonts,
    ...(machine.packer && { packer: machine.packer }),
    date,
    underlays: async () => {
      const { laid, remarks } = underlaysBeside(from, site, machine);
      for (const remark of remarks) told.push(`${name}: ${remark}`);
      return laid;
    },
    ...(page !== undefined && { page }),
    tell: (words) => {
      // Each file with lettering says the same.
      const line = `${name}: ${words}`;
      if (!told.includes(line)) told.push(line);
    },
  });
  if (content === null) return { ...piece, path: null, told };
  const path = join(folder, `${name}${ending}`);
  try {
    machine.write(path, content);
  } catch (error) {
    const says = error instanceof Error ? error.message : String(error);
    return { ...piece, path, told, fault: `${path}: cannot be written: ${says}` };
  }
  return { ...piece, path, told };
}

/** Stalls from which on a second thread is quicker than what it takes to begin: it plans for itself. */
const LARGE = 150;
export const isLargeLot = ({ site }: { readonly site: Site }): boolean => site.stalls.length >= LARGE;

/** The workbook has all tables. */
const TABLES: readonly SheetEnding[] = TABLE_NAMES.map((name) => `.${name}.csv` as const);

/**
 * Groups that share their work, in the order in which they are taken. From one end all that is drawn as the drawing set is,
 * from the other tables and reports, so that what either is made of is worked, and its code made ready, by one thread
 * alone; what has neither tables nor lettering with them stands in the middle, where both meet.
 */
const GROUPS: readonly (readonly SheetEnding[])[] = [
  ['.dxf', '.svg'],
  ['.drawings-tabloid.pdf'],
  ['.drawings.pdf'],
  ['.raised.svg'],
  ['.ifc'],
  ['.plan.json'],
  ['.geojson'],
  ['.utility-letter.pdf'],
  ['.calculations.pdf'],
  ['.pull-cards.pdf'],
  ['.commissioning.pdf', '.commissioning-blank.pdf', '.commissioning.csv', '.checklist.csv', '.open-items.csv'],
  ['.xlsx'],
];

/** Places of sheets, grouped as they are taken. */
function groupsOf(files: readonly SheetFile[]): readonly (readonly number[])[] {
  const taken = new Set<number>();
  const groups = GROUPS.map((endings) => {
    const all =
      files.some(({ ending }) => ending === '.xlsx') && endings.includes('.xlsx') ? [...endings, ...TABLES] : endings;
    return all.flatMap((ending) => {
      const at = files.findIndex((file) => file.ending === ending);
      if (at < 0 || taken.has(at)) return [];
      taken.add(at);
      return [at];
    });
  }).filter((group) => group.length > 0);
  const rest = files.flatMap((_, i) => (taken.has(i) ? [] : [[i]]));
  const middle = Math.ceil(groups.length / 2);
  return [...groups.slice(0, middle), ...rest, ...groups.slice(middle)];
}
