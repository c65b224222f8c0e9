import './ensure-installed.mjs';
import { runChecks, runTogether } from './checks.mjs';

// Read in vitest.config.ts: light tests load each module once for all of them.
process.env.OVERROW_ALL = '1';

/** All that a change must pass, cheapest first. */
await runTogether([
  ['types', 'npx', ['tsc', '-p', '.']],
  ['lint, format and arrows', 'npx', ['biome', 'ci', '--error-on-warnings', '.']],
  ['unused code and packages', 'npx', ['knip', '--no-progress']],
  ['code that only tests keep alive', 'npx', ['knip', '--production', '--no-progress']],
]);
runChecks([['tests', 'npx', ['vitest', 'run', ...process.argv.slice(2)]]]);
