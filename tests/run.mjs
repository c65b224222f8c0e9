import './ensure-installed.mjs';
import { runChecks } from './checks.mjs';

/** All that a change must pass, cheapest first. */
runChecks([
  ['types', 'npx', ['tsc', '-p', '.']],
  ['lint, format and arrows', 'npx', ['biome', 'ci', '--error-on-warnings', '.']],
  ['unused code and packages', 'npx', ['knip', '--no-progress']],
  ['code that only tests keep alive', 'npx', ['knip', '--production', '--no-progress']],
  ['tests', 'npx', ['vitest', 'run', ...process.argv.slice(2)]],
]);
