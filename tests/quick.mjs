import './ensure-installed.mjs';
import { readFileSync } from 'node:fs';
import { runChecks } from './checks.mjs';

/** Each took over two seconds by itself, measured with one worker; together five sixths of the time of all. */
const HEAVY = JSON.parse(readFileSync(new URL('heavy.json', import.meta.url), 'utf8'));

/** The loop of a person at work: what takes long, the browser and unused code are left to `npm test`. */
runChecks([
  ['types', 'npx', ['tsc', '-p', '.']],
  ['lint and format', 'npx', ['biome', 'check', '--error-on-warnings', '.']],
  [
    'tests of the rooms without the long ones',
    'npx',
    ['vitest', 'run', '--project', 'rooms', ...HEAVY.flatMap((file) => ['--exclude', file]), ...process.argv.slice(2)],
  ],
]);
