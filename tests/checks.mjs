import { spawn, spawnSync } from 'node:child_process';

const shell = process.platform === 'win32';

function endIfFailed(what, status) {
  if (status === 0) return;
  console.error(`\n${what}: failed`);
  process.exit(status ?? 1);
}

/** Runs checks (what, command, its words) in their order. The first that fails stops the rest and ends with its status. */
export function runChecks(checks) {
  for (const [what, command, words] of checks) {
    console.log(`\n== ${what}`);
    endIfFailed(what, spawnSync(command, words, { stdio: 'inherit', shell }).status);
  }
}

/**
 * Runs checks (what, command, its words) all at once, and tells what each said in their order. The first in that order
 * that fails ends with its status, once all have ended.
 */
export async function runTogether(checks) {
  const ended = await Promise.all(
    checks.map(
      ([what, command, words]) =>
        new Promise((done) => {
          const child = spawn(command, words, { stdio: ['ignore', 'pipe', 'pipe'], shell });
          const said = [];
          child.stdout.on('data', (data) => said.push(data));
          child.stderr.on('data', (data) => said.push(data));
          child.on('error', (error) => said.push(Buffer.from(`${error}\n`)));
          child.on('close', (status) => done({ what, status, said: Buffer.concat(said) }));
        }),
    ),
  );
  for (const { what, status, said } of ended) {
    console.log(`\n== ${what}`);
    process.stdout.write(said);
    endIfFailed(what, status);
  }
}
