import { writeSite } from '../../../routing/site/file/write.ts';
import { INVENTED_LIST } from '../../prices/invented-list.ts';
import { propose } from '../../propose/propose.ts';
import { MOST_STALLS, ONE_ROW, startSite } from '../../propose/start-site.ts';
import type { Machine } from '../machine.ts';
import { done, type VerbOutcome, wrong } from '../outcome.ts';

export interface NewOptions {
  readonly stalls?: string;
  readonly rows?: string;
  readonly name?: string;
  readonly out?: string;
  /** Writes over what stands at `out` already. */
  readonly replace: boolean;
}

/**
 * `new --stalls N`: a site file to start from, with a canopy, drops, a panel and raceways: on standard output, or written to
 * `--out`.
 */
export function newVerb(words: readonly string[], options: NewOptions, machine: Machine): VerbOutcome {
  if (words.length > 0) return wrong(`new: takes no words but options, not "${words.join(' ')}"`);
  const stalls = Number(options.stalls ?? Number.NaN);
  if (!(Number.isInteger(stalls) && stalls >= 1 && stalls <= MOST_STALLS))
    return wrong(
      `new --stalls: expected a whole number from 1 to ${MOST_STALLS}, ${options.stalls === undefined ? 'none was given' : `got "${options.stalls}"`}`,
    );
  const rows = Number(options.rows ?? (stalls > ONE_ROW ? 2 : 1));
  if (rows !== 1 && rows !== 2) return wrong(`new --rows: expected 1 or 2, got "${options.rows}"`);
  const { out } = options;
  if (out !== undefined && !options.replace && machine.isTaken(out))
    return wrong(`new --out: ${out} stands there already; --replace writes over it`);
  const start = startSite({ name: options.name ?? 'New lot', stalls, rows });
  const { file } = propose(start, { what: 'all', cordsADrop: 1, prices: INVENTED_LIST });
  const text = writeSite(file);
  if (out === undefined) return done(text);
  try {
    machine.write(out, text);
  } catch (error) {
    return wrong(`${out}: cannot be written: ${error instanceof Error ? error.message : String(error)}`);
  }
  return done(`${out}\n`);
}
