import type { SiteFile } from '../../../routing/site/site.ts';
import type { Edit, FileField } from '../change/edit.ts';
import { fieldInFile } from '../change/file-lengths.ts';
import { setStep } from '../change/set-field.ts';
import { alike } from './gather.ts';

/** Sets a top-level field of the file, in the file's units; undefined takes it away. */
export function setField<F extends FileField>(
  file: SiteFile,
  name: string,
  field: F,
  after: SiteFile[F] | undefined,
): Edit {
  return { name, steps: alike(file[field], after) ? [] : [setStep(file, field, after)] };
}

/** Renames the site. */
export const nameSite = (file: SiteFile, name: string): Edit => setField(file, `Name the site ${name}`, 'name', name);

type RulesRecord = NonNullable<SiteFile['rules']>;
/** New values for rules, lengths in site feet; a rule that is undefined goes back to its default. */
export type RulesPatch = { readonly [K in keyof RulesRecord]?: RulesRecord[K] | undefined };

/** Changes rules. A group of them (`allowance`) is given as far as it changes: the rest of it stays. */
export function changeRules(file: SiteFile, patch: RulesPatch): Edit {
  const rules = new Map<string, unknown>(Object.entries(file.rules ?? {}));
  const given = Object.entries(patch);
  const values: RulesRecord = Object.fromEntries(given.filter(([, value]) => value !== undefined));
  for (const [name, value] of given) if (value === undefined) rules.delete(name);
  for (const [name, value] of Object.entries(fieldInFile(file, 'rules', values))) {
    const was = rules.get(name);
    rules.set(name, isGroup(value) && isGroup(was) ? { ...was, ...value } : value);
  }
  const after = rules.size > 0 ? (Object.fromEntries(rules) as RulesRecord) : undefined;
  return setField(file, `Change ${given.length === 1 ? `the rule ${given[0]?.[0]}` : 'rules'}`, 'rules', after);
}

const isGroup = (value: unknown): value is object => typeof value === 'object' && value !== null;

/** Sets the gridlines, site feet; null takes them away. */
export const setGridlines = (file: SiteFile, gridlines: NonNullable<SiteFile['gridlines']> | null): Edit =>
  setField(file, 'Change gridlines', 'gridlines', gridlines ? fieldInFile(file, 'gridlines', gridlines) : undefined);

/** Sets the site's own vehicle classes, site feet; none takes the field away. */
export function setVehicles(file: SiteFile, vehicles: NonNullable<SiteFile['vehicles']>): Edit {
  const own = Object.keys(vehicles).length > 0 ? fieldInFile(file, 'vehicles', vehicles) : undefined;
  return setField(file, 'Change vehicle classes', 'vehicles', own);
}
