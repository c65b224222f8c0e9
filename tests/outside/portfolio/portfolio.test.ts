import { type ChildProcess, execFileSync, spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { writeSite } from '../../../routing/site/file/write.ts';
import { makeLot } from '../../bench/make-lot.ts';

/**
 * A portfolio on a cluster (dask.distributed, Debian's python3-distributed): workers of this machine here, those of a
 * scheduler elsewhere. The plans must be those of one process, byte for byte, whatever dies on the way.
 */
const PYTHON = '/usr/bin/python3';
const HAS_ENGINE = spawnSync(PYTHON, ['-c', 'import distributed']).status === 0;
if (!HAS_ENGINE)
  console.warn('NOT RUN: planning a portfolio on a cluster; it needs dask.distributed (Debian: python3-distributed).');

const ROOT = resolve(import.meta.dirname, '../../..');
/** Twelve batches, and each pair of size and amps that the sites are made with. */
const SITES = 240;
const folder = mkdtempSync(join(tmpdir(), 'overrow-portfolio-'));
const paths = Array.from({ length: SITES }, (_, i) => join(folder, `${String(i).padStart(4, '0')}.site.json`));
const BUILT = join(ROOT, '.build', 'overrow.mjs');

beforeAll(() => {
  execFileSync(process.execPath, [join(ROOT, 'calc', 'cli', 'run.mjs'), 'schema'], { stdio: 'ignore' });
  for (const [i, path] of paths.entries())
    writeFileSync(path, writeSite(makeLot({ name: `Site ${i}`, stalls: 2 + 2 * (i % 8), managedAmps: 40 + (i % 13) })));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const cluster = (sites: readonly string[], out: string): ChildProcess =>
  spawn(PYTHON, [
    join(ROOT, 'samples', 'portfolio.py'),
    ...['--out', out, '--workers', '2', '--command', `${process.execPath} ${BUILT}`],
    ...sites,
  ]);

interface Ended {
  readonly status: number | null;
  readonly err: string;
}

const ended = (child: ChildProcess, hear: (err: string) => void = () => {}): Promise<Ended> =>
  new Promise((done) => {
    let err = '';
    child.stderr?.on('data', (data: Buffer) => {
      err += data.toString();
      hear(err);
    });
    child.on('close', (status) => done({ status, err }));
  });

/** What one process gives. */
const alone = (sites: readonly string[]): Buffer =>
  execFileSync(process.execPath, [BUILT, 'plan', '--json', ...sites], { maxBuffer: 1 << 30 });

/** Processes whose parent's parent is the given one or below it and whose words say that they are workers. */
function workersOf(pid: number): number[] {
  const rows = execFileSync('ps', ['-eo', 'pid=,ppid=,args='], { encoding: 'utf8' })
    .trim()
    .split('\n')
    .map((row) => /^\s*(\d+)\s+(\d+)\s+(.*)$/.exec(row))
    .filter((row) => row !== null)
    .map((row) => ({ pid: Number(row[1]), parent: Number(row[2]), words: row[3] ?? '' }));
  const children = (of: number): typeof rows => rows.filter(({ parent }) => parent === of);
  return children(pid)
    .flatMap((child) => [child, ...children(child.pid)])
    .filter(({ words }) => words.includes('spawn_main') || words.includes('forkserver'))
    .map((worker) => worker.pid);
}

test.skipIf(!HAS_ENGINE)(
  'many sites on a cluster, one worker killed on the way and one bad file among them: the plans of one process',
  async () => {
    const bad = join(folder, 'bad.site.json');
    writeFileSync(bad, '{"format": "overrow/site", "version": 1, "units": "ft", "name": "bad", "stalls": 3}');
    const sites = [...paths.slice(0, 120), bad, ...paths.slice(120)];
    const out = join(folder, 'plans.jsonl');
    const child = cluster(sites, out);
    let killed = 0;
    const { status, err } = await ended(child, (soFar) => {
      if (killed > 0 || !soFar.includes(' of ')) return;
      const workers = workersOf(child.pid!);
      // The last is a worker; the first may be the engine's own tracker of resources.
      const victim = workers.at(-1);
      if (victim === undefined) return;
      process.kill(victim, 'SIGKILL');
      killed = victim;
    });
    expect(killed).toBeGreaterThan(0);
    expect(status).toBe(2);
    expect(err).toContain(`${bad}: `);
    expect(err).toContain('stalls');
    const plans = readFileSync(out);
    expect(plans.equals(alone(paths))).toBe(true);
    expect(plans.toString().trimEnd().split('\n')).toHaveLength(SITES);
  },
);
