import { basename } from 'node:path';
import { safeFileName } from '../sheets/file-name.ts';

/** What the sheets of a site file are named after: the file's own name without its endings; of standard input, `site`. */
export const sheetsNameOf = (path: string): string =>
  path === '-' ? 'site' : safeFileName(basename(path).replace(/(\.site)?\.json$/, ''));
