import regular from '../sheets/fonts/overpass-regular.ttf?inline';
import semibold from '../sheets/fonts/overpass-semibold.ttf?inline';
import type { FontBytes } from '../sheets/pdf/kit/lettering.ts';

/** The typeface of the drawing set: it travels inside the one file of the command line. */
export const packedFonts = async (): Promise<FontBytes> => {
  fonts ??= { regular: bytesOf(regular), bold: bytesOf(semibold) };
  return fonts;
};

let fonts: FontBytes | undefined;

const bytesOf = (dataUrl: string): Uint8Array => Buffer.from(dataUrl.slice(dataUrl.indexOf(',') + 1), 'base64');
