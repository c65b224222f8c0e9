import * as v from 'valibot';
import { ELEMENT_LISTS } from '../../../routing/site/kinds/kinds.ts';
import { markSchema } from '../../../routing/site/schema/mark-schema.ts';
import { siteFileSchema } from '../../../routing/site/schema/schema.ts';
import type { Edit } from './edit.ts';
import type { ListName } from './element-lists.ts';
import { elementSchema } from './file-lengths.ts';

const place = v.pipe(v.number(), v.integer(), v.minValue(0));
const list = v.picklist(ELEMENT_LISTS);
const anything = v.unknown();

const stepSchema = v.variant('kind', [
  v.strictObject({ kind: v.literal('insert'), list, index: place, element: anything }),
  v.strictObject({ kind: v.literal('remove'), list, index: place, element: anything }),
  v.strictObject({ kind: v.literal('change'), list, id: v.string(), before: anything, after: anything }),
  v.strictObject({
    kind: v.literal('set'),
    field: v.string(),
    before: v.exactOptional(anything),
    after: v.exactOptional(anything),
    at: v.exactOptional(place),
  }),
  v.strictObject({ kind: v.literal('marks'), added: v.array(markSchema), taken: v.array(markSchema) }),
]);
const editSchema = v.strictObject({ name: v.pipe(v.string(), v.maxLength(2000)), steps: v.array(stepSchema) });

const elementSchemas = new Map<ListName, v.GenericSchema>(ELEMENT_LISTS.map((name) => [name, elementSchema(name)]));
const fieldSchemas = new Map<string, v.GenericSchema>(
  Object.entries(siteFileSchema.entries)
    .filter(([field]) => field !== 'format' && field !== 'version')
    .map(([field, schema]) => [field, 'wrapped' in schema ? schema.wrapped : schema]),
);

/** An edit out of a store or another tab; null where it is none. Every element in it is a sound one of its list. */
export function parseEdit(value: unknown): Edit | null {
  const parsed = v.safeParse(editSchema, value, { abortEarly: true });
  return parsed.success && parsed.output.steps.every(isSound) ? (value as Edit) : null;
}

function isSound(step: v.InferOutput<typeof stepSchema>): boolean {
  if (step.kind === 'marks') return true;
  if (step.kind === 'set') {
    const schema = fieldSchemas.get(step.field);
    const sound = (value: unknown): boolean => value === undefined || v.is(schema!, value);
    return schema !== undefined && sound(step.before) && sound(step.after);
  }
  const schema = elementSchemas.get(step.list)!;
  if (step.kind === 'change') return v.is(schema, step.before) && v.is(schema, step.after);
  return v.is(schema, step.element);
}
