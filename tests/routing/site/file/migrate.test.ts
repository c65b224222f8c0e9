import { describe, expect, it } from 'vitest';
import { MIGRATIONS, type Migration, migrated } from '../../../../routing/site/file/migrate.ts';
import { readSiteValue } from '../../../../routing/site/file/read.ts';
import { siteFileSchema } from '../../../../routing/site/schema/schema.ts';
import { everyField } from './every-field.ts';

/** Invented ups, to try the mechanism that version 1 has no use for yet. */
const ups: readonly Migration[] = [
  ({ title, ...rest }) => ({ ...rest, version: 2, name: title }),
  (file) => ({ ...file, version: 3, units: file.units ?? 'ft' }),
];
const old = Object.freeze({ format: 'overrow/site', version: 1, title: 'Old lot' });

describe('a file of an older version', () => {
  it('is taken up version by version', () => {
    expect(migrated(old, ups)).toEqual({
      ok: true,
      value: { format: 'overrow/site', version: 3, name: 'Old lot', units: 'ft' },
    });
    expect(migrated({ format: 'overrow/site', version: 2 }, ups)).toEqual({
      ok: true,
      value: { format: 'overrow/site', version: 3, units: 'ft' },
    });
  });

  it('is left alone where it is of the newest', () => {
    const newest = { format: 'overrow/site', version: 3 };
    expect(migrated(newest, ups)).toEqual({ ok: true, value: newest });
    const value = everyField();
    const result = migrated(value, MIGRATIONS);
    expect(result.ok && result.value).toBe(value);
  });
});

describe('a file of a newer version', () => {
  it('is refused with both versions named, and nothing else said of it', () => {
    expect(readSiteValue({ format: 'overrow/site', version: 2, parking: [] })).toEqual({
      ok: false,
      errors: [
        { place: 'version', says: 'this file is of version 2, newer than version 1, the newest that is read here' },
      ],
    });
  });
});

describe('the versions', () => {
  it('of the schema and of the last up agree', () => {
    expect(siteFileSchema.entries.version.literal).toBe(MIGRATIONS.length + 1);
  });

  it('are told only of files of this format', () => {
    for (const value of [
      null,
      3,
      [],
      {},
      { version: 1 },
      { ...old, format: 'x' },
      { ...old, version: '1' },
      { ...old, version: 0 },
    ]) {
      expect(migrated(value, ups)).toEqual({ ok: true, value });
    }
  });
});
