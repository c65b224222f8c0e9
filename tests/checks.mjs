import { spawnSync } from 'node:child_process';

/** Runs checks (what, command, its words) in their order. The first that fails stops the rest and ends with its status. */
export function runChecks(checks) {
  for (const [what, command, words] of checks) {
    console.log(`\n== ${what}`);
    const { status } = spawnSync(command, words, { stdio: 'inherit', shell: process.platform === 'win32' });
    if (status !== 0) {
      console.error(`\n${what}: failed`);
      process.exit(status ?? 1);
    }
  }
}
