import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import regular from '../../sheets/fonts/overpass-regular.ttf?inline';
import semibold from '../../sheets/fonts/overpass-semibold.ttf?inline';
import type { FontBytes } from '../../sheets/pdf/kit/lettering/lettering.ts';

/** The typefaces of other scripts lie beside the bundled command; from source they are where they are kept. */
const BESIDE = fileURLToPath(new URL('./scripts/', import.meta.url));
const KEPT = fileURLToPath(new URL('../../sheets/fonts/scripts/', import.meta.url));

/** The typeface of the drawing set: it travels inside the one file of the command line. */
export const packedFonts = async (): Promise<FontBytes> => {
  fonts ??= {
    regular: bytesOf(regular),
    bold: bytesOf(semibold),
    scripts: (name) => readFile(`${existsSync(BESIDE) ? BESIDE : KEPT}${name}.woff`),
  };
  return fonts;
};

let fonts: FontBytes | undefined;

const bytesOf = (dataUrl: string): Uint8Array => Buffer.from(dataUrl.slice(dataUrl.indexOf(',') + 1), 'base64');
