import { kept } from '../../kept/kept.ts';
import type { AsBuilt, Mark } from '../site.ts';
import { type Register, registersOf } from './registers.ts';

/** Which fields of what was measured a register speaks of. */
function fieldsOf({ what, part, now }: Register): Partial<{ [K in keyof AsBuilt]: AsBuilt[K] | undefined }> {
  if (what === 'place' && (part === 'box' || part === 'retractor')) return { [part]: now?.place };
  if (what === 'set') return { checkedOn: now ? (now.on ?? '') : undefined, checkedBy: now?.by || undefined };
  if (what === 'note') return { note: now?.text };
  return {};
}

/** What was measured as it stands now: what the file's table says, and over it what its records say. */
export const asBuiltNow = kept(
  (asBuilt: ReadonlyMap<string, AsBuilt>, records: readonly Mark[]): ReadonlyMap<string, AsBuilt> => {
    if (records.length === 0) return asBuilt;
    const now = new Map(asBuilt);
    for (const register of registersOf(records).values()) {
      const fields = Object.entries(fieldsOf(register));
      if (fields.length === 0) continue;
      const held = new Map(Object.entries(now.get(register.of) ?? {}));
      for (const [field, value] of fields) {
        if (value === undefined) held.delete(field);
        else held.set(field, value);
      }
      if (held.size > 0) now.set(register.of, Object.fromEntries(held));
      else now.delete(register.of);
    }
    return now;
  },
);
