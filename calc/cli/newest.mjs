import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** When the newest file of a folder and of all in it was written, ms. */
export const newestIn = (folder) =>
  readdirSync(folder, { withFileTypes: true }).reduce((latest, entry) => {
    const path = join(folder, entry.name);
    return Math.max(latest, entry.isDirectory() ? newestIn(path) : statSync(path).mtimeMs);
  }, 0);
