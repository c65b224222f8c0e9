import './ensure-installed.mjs';
import { spawnSync } from 'node:child_process';

/** All that a change must pass, cheapest first. Each stops the rest where it fails. */
const CHECKS = [
  ['types', 'npx', ['tsc', '-p', '.']],
  ['lint, format and arrows', 'npx', ['biome', 'ci', '--error-on-warnings', '.']],
  ['unused code and packages', 'npx', ['knip', '--no-progress']],
  ['code that only tests keep alive', 'npx', ['knip', '--production', '--no-progress']],
  ['tests', 'npx', ['vitest', 'run', ...process.argv.slice(2)]],
];

for (const [what, command, words] of CHECKS) {
  console.log(`\n== ${what}`);
  const { status } = spawnSync(command, words, { stdio: 'inherit', shell: process.platform === 'win32' });
  if (status !== 0) {
    console.error(`\n${what}: failed`);
    process.exit(status ?? 1);
  }
}
