import { deflateSync, Zip, ZipPassThrough, zlibSync } from 'fflate';
import { ZIP_TIME } from './zip-time.ts';

/** Packs bytes. What one library packs is not to the byte what another does; what is unpacked is. */
export interface Packer {
  /** In the zlib format (RFC 1950), as a stream of a PDF is. */
  readonly stream: (bytes: Uint8Array) => Uint8Array;
  /** Without head and foot (RFC 1951), as an entry of a ZIP is. */
  readonly entry: (bytes: Uint8Array) => Uint8Array;
}

/** Three tenths less time than the usual level, for pages a twentieth longer. */
const LEVEL = 4;

/** Packs in every engine, to the same bytes. */
export const ANYWHERE: Packer = {
  stream: (bytes) => zlibSync(bytes, { level: LEVEL }),
  entry: (bytes) => deflateSync(bytes, { level: LEVEL }),
};

/** How entries of a ZIP are packed, by the number that its format has for it. */
const DEFLATED = 8;

/** Files by their names as one ZIP, with one time at each: the same files, packed alike, are the same bytes. */
export function zipped(files: Readonly<Record<string, Uint8Array>>, { entry }: Packer): Uint8Array {
  class Entry extends ZipPassThrough {
    override compression = DEFLATED;
    override mtime = ZIP_TIME;
    protected override process(bytes: Uint8Array, isLast: boolean): void {
      this.ondata(null, entry(bytes) as Uint8Array<ArrayBuffer>, isLast);
    }
  }
  const parts: Uint8Array[] = [];
  const zip = new Zip((error, part) => {
    if (error) throw error;
    parts.push(part);
  });
  for (const [name, bytes] of Object.entries(files)) {
    const file = new Entry(name);
    zip.add(file);
    file.push(bytes, true);
  }
  zip.end();
  const whole = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
