import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome', 'chromium-headless-shell'];

/** Flags of our own: those that some packaged browsers bring switch off checks that the tests rely on. */
export const FLAGS = [
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--font-render-hinting=none',
];

function onPath(): string | undefined {
  for (const name of NAMES)
    for (const folder of (process.env.PATH ?? '').split(delimiter)) {
      const file = join(folder, name);
      if (folder && existsSync(file)) return file;
    }
  return undefined;
}

async function fromRegistry(): Promise<string | undefined> {
  if (process.platform !== 'linux' || process.arch !== 'x64') return undefined;
  try {
    const { default: packed } = await import('@sparticuz/chromium');
    return await packed.executablePath();
  } catch {
    return undefined;
  }
}

/**
 * A Chromium to test with: the one named by CHROME_PATH (or nothing else), one on the PATH, the one playwright
 * keeps, or the one that the optional registry package brings. Throws where there is none: a skipped browser test
 * would look like a passed one.
 */
export async function findChromium(): Promise<string> {
  const named = process.env.CHROME_PATH;
  if (named) {
    if (!existsSync(named)) throw new Error(`CHROME_PATH names ${named}, which is not there`);
    return named;
  }
  const found = onPath();
  if (found) return found;
  const kept = chromium.executablePath();
  if (kept && existsSync(kept)) return kept;
  const packed = await fromRegistry();
  if (packed) return packed;
  throw new Error(
    'The browser tests need a Chromium: install one (on Debian, "apt-get install chromium"), set CHROME_PATH, or install the optional package @sparticuz/chromium.',
  );
}

export async function launchBrowser(): Promise<Browser> {
  const executablePath = await findChromium();
  const asRoot = process.getuid?.() === 0;
  return chromium.launch({ executablePath, headless: true, args: asRoot ? [...FLAGS, '--no-sandbox'] : FLAGS });
}

/** Name and version of the browser that the tests will use, for the log. */
export async function browserVersion(): Promise<string> {
  const path = await findChromium();
  return `${path}: ${execFileSync(path, ['--version', '--no-sandbox'], { encoding: 'utf8' }).trim()}`;
}
