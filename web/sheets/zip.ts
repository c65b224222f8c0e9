import { zipSync } from 'fflate';
import { ZIP_TIME } from '../../calc/sheets/zip-time.ts';

/** What is packed within is not packed again. */
const PACKED = /\.(pdf|xlsx|jpe?g|png)$/i;

/** Files by their names as one ZIP: the same files give the same bytes. */
export const zipOf = (files: Readonly<Record<string, string | Uint8Array>>): Uint8Array<ArrayBuffer> =>
  new Uint8Array(
    zipSync(
      Object.fromEntries(
        Object.entries(files).map(([name, content]) => [
          name,
          typeof content === 'string'
            ? new TextEncoder().encode(content)
            : [content, { level: PACKED.test(name) ? 0 : 6 }],
        ]),
      ),
      { mtime: ZIP_TIME },
    ),
  );
