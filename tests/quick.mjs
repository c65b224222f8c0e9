import './ensure-installed.mjs';
import { runChecks } from './checks.mjs';

// Read in vitest.config.ts: leaves out the tests of heavy.json, each over two seconds by itself with one worker, or in
// need of modules of its own.
process.env.OVERROW_QUICK = '1';

/** The loop of a person at work: what takes long, the browser and unused code are left to `npm test`. */
runChecks([
  ['types', 'npx', ['tsc', '-p', '.', '--incremental', '--tsBuildInfoFile', '.build/quick.tsbuildinfo']],
  ['lint and format', 'npx', ['biome', 'check', '--error-on-warnings', '.']],
  [
    'tests of the rooms without the long ones',
    'npx',
    ['vitest', 'run', '--project', 'rooms', ...process.argv.slice(2)],
  ],
]);
