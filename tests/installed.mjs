import { existsSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** The packages of a lock file, by their folders; null where it cannot be read. */
function packagesOf(path) {
  try {
    return JSON.parse(readFileSync(path, 'utf8')).packages ?? null;
  } catch {
    return null;
  }
}

/**
 * Whether what a project's lock file asks for is installed. npm writes its own copy of the lock file at the end of an
 * install: where that is the newer one, all is in place. A pull may touch the lock file and change nothing of it, so
 * where it is the older one the two are compared, package by package; what is optional may be missing.
 */
export function isInstalled(root) {
  const wanted = join(root, 'package-lock.json');
  const installed = join(root, 'node_modules', '.package-lock.json');
  if (!existsSync(installed)) return false;
  if (statSync(installed).mtimeMs >= statSync(wanted).mtimeMs) return true;
  const [asked, here] = [packagesOf(wanted), packagesOf(installed)];
  if (asked === null || here === null) return false;
  return Object.entries(asked).every(
    ([folder, { version, integrity, optional }]) =>
      folder === '' ||
      (here[folder] === undefined
        ? optional === true
        : here[folder].version === version && here[folder].integrity === integrity),
  );
}
