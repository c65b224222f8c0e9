import { readFileSync } from 'node:fs';
import { plan } from '../../calc/plan/plan.ts';
import { runsOf } from '../../routing/network/runs.ts';
import { reachOf } from '../../routing/reach/reach.ts';
import type { SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { makeLot } from './make-lot.ts';

export interface StageRow {
  readonly stalls: number;
  readonly what: 'cold' | 'after moving one drop';
  readonly runs: number;
  readonly reach: number;
  readonly rest: number;
  readonly whole: number;
  /** Processor time of the whole, which a busy machine stretches less than the clock. */
  readonly cpu: number;
  /** Of that, what the plan's own thread took, which is what one waits for: compiling and half of the garbage go beside it. NaN where the system does not tell. */
  readonly thread: number;
  /** What is put together only when it is asked for: takeoff, what hangs, conduits and boxes. */
  readonly asked: number;
  /** Sum of run lengths, feet: a faster wrong answer shows. */
  readonly checksum: number;
}

const MOVES = 60;

/** Milliseconds of processor time so far. */
function processorTime(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** Milliseconds of processor time of this thread so far, as Linux counts them; NaN elsewhere. */
function threadTime(): number {
  try {
    return Number(readFileSync(`/proc/self/task/${process.pid}/schedstat`, 'utf8').split(' ')[0]) / 1e6;
  } catch {
    return Number.NaN;
  }
}

/** Milliseconds of the plan of made lots, stage by stage: cold (once), and after moving one drop (median of many). */
export function planStages(sizes: readonly number[]): StageRow[] {
  return sizes.flatMap((stalls) => {
    let file = makeLot({ name: `made lot of ${stalls}`, stalls });
    const rows: StageRow[] = [timed(stalls, 'cold', file)];
    const moved: StageRow[] = [];
    for (let move = 0; move < MOVES; move++) {
      file = withDropMoved(file, move);
      moved.push(timed(stalls, 'after moving one drop', file));
    }
    const middle = (of: (row: StageRow) => number): number => moved.map(of).sort((a, b) => a - b)[MOVES >> 1] as number;
    rows.push({
      stalls,
      what: 'after moving one drop',
      runs: middle((row) => row.runs),
      reach: middle((row) => row.reach),
      rest: middle((row) => row.rest),
      whole: middle((row) => row.whole),
      cpu: middle((row) => row.cpu),
      thread: middle((row) => row.thread),
      asked: middle((row) => row.asked),
      checksum: moved.at(-1)?.checksum ?? 0,
    });
    return rows;
  });
}

function timed(stalls: number, what: StageRow['what'], file: SiteFile): StageRow {
  const site = toSite(file);
  const [cpu, thread] = [processorTime(), threadTime()];
  const t0 = performance.now();
  runsOf(site);
  const t1 = performance.now();
  reachOf(site);
  const t2 = performance.now();
  const planned = plan(site);
  const t3 = performance.now();
  const spent = processorTime() - cpu;
  const own = threadTime() - thread;
  const { runs, takeoff, hung, conduits, boxes } = planned;
  const asked = takeoff.length + hung.length + conduits.length + boxes.length > 0 ? performance.now() - t3 : 0;
  const checksum = runs.reduce((sum, { length }) => sum + (length ?? 0), 0);
  return {
    stalls,
    what,
    runs: t1 - t0,
    reach: t2 - t1,
    rest: t3 - t2,
    whole: t3 - t0,
    cpu: spent,
    thread: own,
    asked,
    checksum,
  };
}

/** One drop in the middle of the list moved back and forth along its stripe. */
function withDropMoved(file: SiteFile, move: number): SiteFile {
  const drops = [...(file.drops ?? [])];
  const place = drops.length >> 1;
  const drop = drops[place];
  if (!drop) return file;
  const step = move % 2 === 0 ? 0.25 : -0.25;
  const [x, y, z] = drop.box;
  drops[place] = {
    ...drop,
    box: [x, y + step, z],
    ...(drop.retractor ? { retractor: [x, y + step, drop.retractor[2]] as const } : {}),
  };
  return { ...file, drops };
}
