import { zipSync } from 'fflate';
import { ZIP_TIME } from '../../calc/sheets/zip-time.ts';

/** Files by their names as one ZIP: the same files give the same bytes. */
export const zipOf = (files: Readonly<Record<string, string | Uint8Array>>): Uint8Array<ArrayBuffer> =>
  new Uint8Array(
    zipSync(
      Object.fromEntries(
        Object.entries(files).map(([name, content]) => [
          name,
          typeof content === 'string' ? new TextEncoder().encode(content) : content,
        ]),
      ),
      { mtime: ZIP_TIME },
    ),
  );
