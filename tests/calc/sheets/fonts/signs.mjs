import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { create } from 'fontkit';

const FONTS = join(import.meta.dirname, '../../../../calc/sheets/fonts');

/** What each typeface of the sheets has, as `signs.json` says it; run by itself it writes that file. */
export function signsOfTypefaces() {
  const scripts = readdirSync(join(FONTS, 'scripts')).filter((file) => file.endsWith('.woff'));
  return {
    set: pages('overpass-regular.ttf'),
    ...Object.fromEntries(scripts.map((file) => [file.slice(0, -'.woff'.length), pages(`scripts/${file}`)])),
  };
}

/** Signs as pages of 256, each a bit of 32 bytes in base 64, or an asterisk where all are there. */
function pages(file) {
  const found = new Map();
  for (const code of create(readFileSync(join(FONTS, file))).characterSet) {
    // A table of signs ends with the number that is none.
    if (code === 0xffff) continue;
    const bits = found.get(code >> 8) ?? new Uint8Array(32);
    found.set(code >> 8, bits);
    bits[(code & 0xff) >> 3] |= 1 << (code & 7);
  }
  return Object.fromEntries(
    [...found].map(([page, bits]) => [
      page.toString(16),
      bits.every((byte) => byte === 0xff) ? '*' : Buffer.from(bits).toString('base64'),
    ]),
  );
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href)
  writeFileSync(join(FONTS, 'signs.json'), `${JSON.stringify(signsOfTypefaces(), null, 2)}\n`);
