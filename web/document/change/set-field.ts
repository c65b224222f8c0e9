import { siteFileSchema } from '../../../routing/site/schema/schema.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import type { EditStep, FileField } from './edit.ts';

/** The fields of a site file in the schema's order, by which a new one is put among those that are there. */
const ORDER = Object.keys(siteFileSchema.entries);

/** The step that gives a field of the file a new value, or takes the field away (undefined). */
export function setStep<F extends FileField>(file: SiteFile, field: F, after: SiteFile[F] | undefined): EditStep {
  const before = file[field];
  return {
    kind: 'set',
    field,
    ...(before !== undefined && { before }),
    ...(after !== undefined && { after }),
    ...((before === undefined || after === undefined) && { at: placeOf(file, field) }),
  };
}

function placeOf(file: SiteFile, field: FileField): number {
  const names = Object.keys(file);
  const found = names.indexOf(field);
  if (found >= 0) return found;
  const rank = ORDER.indexOf(field);
  const next = names.findIndex((name) => ORDER.indexOf(name) > rank);
  return next < 0 ? names.length : next;
}
