import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import * as schema from '../../routing/site/schema.ts';

/** Where the fields of each kind of element are edited. */
const FORMS = {
  stalls: [schema.stallSchema, 'panels/stall-panel.tsx'],
  columns: [schema.columnSchema, 'panels/plain-panels.tsx'],
  members: [schema.memberSchema, 'panels/plain-panels.tsx'],
  keepouts: [schema.keepoutSchema, 'panels/area-panel.tsx'],
  aisles: [schema.aisleSchema, 'panels/area-panel.tsx'],
  equipment: [schema.equipmentSchema, 'panels/equipment-panel.tsx', 'panels/rating-fields.tsx'],
  feeders: [schema.feederSchema, 'panels/feeder-panel.tsx'],
  loads: [schema.loadSchema, 'panels/load-panel.tsx'],
  raceways: [schema.racewaySchema, 'panels/raceway-panel.tsx'],
  pullpoints: [schema.pullpointSchema, 'panels/plain-panels.tsx'],
  drops: [schema.dropSchema, 'panels/drop-panel.tsx'],
  chargers: [schema.chargerSchema, 'panels/charger-panel.tsx'],
  vehicles: [schema.vehicleSchema, 'panels/site/vehicles-form.tsx'],
  asBuilt: [schema.asBuiltSchema, 'panels/as-built-fields.tsx'],
  gridlines: [schema.gridlinesSchema, 'panels/site/gridlines-form.tsx'],
} as const;

// The id is changed in the head of the panel, whatever the element.
test.each(Object.entries(FORMS))('every field of %s is changed in its own form', (_, [{ entries }, ...files]) => {
  const form = files.map((file) => readFileSync(`web/${file}`, 'utf8')).join('\n');
  // As a property of what is set (`change({ width })`, `{ ...record, note: ... }`), or by its name in a list of fields.
  const changed = (field: string): boolean =>
    new RegExp(`[{,]\\s*(\\.\\.\\.\\w+,\\s*)?${field}\\b\\s*[:},]|'${field}'`).test(form);
  expect(Object.keys(entries).filter((field) => field !== 'id' && !changed(field))).toEqual([]);
});
