import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type * as v from 'valibot';
import { expect, test } from 'vitest';
import * as schema from '../../routing/site/schema.ts';

/** The forms of the page, as one text. */
const FORMS = ['web/panels', 'web/underlay', 'web/tables']
  .flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.tsx?$/.test(name))
      .map((name) => readFileSync(join(folder, name), 'utf8')),
  )
  .join('\n');

const SCHEMAS = {
  stalls: schema.stallSchema,
  columns: schema.columnSchema,
  members: schema.memberSchema,
  keepouts: schema.keepoutSchema,
  aisles: schema.aisleSchema,
  equipment: schema.equipmentSchema,
  feeders: schema.feederSchema,
  loads: schema.loadSchema,
  raceways: schema.racewaySchema,
  pullpoints: schema.pullpointSchema,
  drops: schema.dropSchema,
  chargers: schema.chargerSchema,
  vehicles: schema.vehicleSchema,
  asBuilt: schema.asBuiltSchema,
  gridlines: schema.gridlinesSchema,
  underlay: schema.underlaySchema,
} satisfies Record<string, { readonly entries: Record<string, v.GenericSchema> }>;

test.each(Object.entries(SCHEMAS))('every field of %s stands in a form', (_, { entries }) => {
  const missing = Object.keys(entries).filter((field) => !new RegExp(`\\b${field}\\b`).test(FORMS));
  expect(missing).toEqual([]);
});
