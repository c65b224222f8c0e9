import type { Fault } from './place.ts';

/** Turns a file of one version into one of the next: pure, on plain JSON that nobody has checked yet. */
export type Migration = (file: Readonly<Record<string, unknown>>) => Readonly<Record<string, unknown>>;

/** From version 1 to 2, from 2 to 3, and so on: only ever appended to. Version 1 is the first. */
export const MIGRATIONS: readonly Migration[] = [];

export type Migrated = { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly fault: Fault };

/**
 * A file brought to the newest version, one past the number of `ups`. A newer file is refused with both versions named.
 * What has no version that could be told comes back as it is, for reading to say what is wrong with it.
 */
export function migrated(value: unknown, ups: readonly Migration[]): Migrated {
  const newest = ups.length + 1;
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return { ok: true, value };
  const { format, version } = value as Readonly<Record<string, unknown>>;
  if (format !== 'overrow/site' || typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return { ok: true, value };
  }
  if (version > newest) {
    const says = `this file is of version ${version}, newer than version ${newest}, the newest that is read here`;
    return { ok: false, fault: { path: ['version'], says } };
  }
  return { ok: true, value: ups.slice(version - 1).reduce<object>((file, up) => up(file as never), value) };
}
