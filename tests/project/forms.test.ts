import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { KINDS } from '../../routing/site/kinds/kinds.ts';
import * as schema from '../../routing/site/schema.ts';

/** Where the fields of each kind of element are edited. */
const FORMS = {
  stalls: [KINDS.stalls.schema, 'panels/stall-panel.tsx'],
  columns: [KINDS.columns.schema, 'panels/plain-panels.tsx'],
  members: [KINDS.members.schema, 'panels/plain-panels.tsx'],
  keepouts: [KINDS.keepouts.schema, 'panels/area-panel.tsx'],
  aisles: [KINDS.aisles.schema, 'panels/area-panel.tsx'],
  equipment: [KINDS.equipment.schema, 'panels/equipment-panel.tsx', 'panels/rating-fields.tsx'],
  feeders: [KINDS.feeders.schema, 'panels/feeder-panel.tsx'],
  loads: [KINDS.loads.schema, 'panels/load-panel.tsx'],
  raceways: [KINDS.raceways.schema, 'panels/raceway-panel.tsx'],
  pullpoints: [KINDS.pullpoints.schema, 'panels/plain-panels.tsx'],
  drops: [KINDS.drops.schema, 'panels/drop-panel.tsx'],
  chargers: [KINDS.chargers.schema, 'panels/charger-panel.tsx'],
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
