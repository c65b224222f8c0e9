import * as v from 'valibot';

const mirrorSchema = v.object({
  doc: v.string(),
  name: v.string(),
  edits: v.number(),
  at: v.number(),
});

/** What is remembered of the newest document apart from the store: enough to notice that the store was cleared. */
export type Mirror = Readonly<v.InferOutput<typeof mirrorSchema>>;

/** The record in a text; null where there is none. */
export function parseMirror(text: string | null): Mirror | null {
  if (text === null) return null;
  try {
    const parsed = v.safeParse(mirrorSchema, JSON.parse(text));
    return parsed.success ? parsed.output : null;
  } catch {
    return null;
  }
}

/** What to tell a person whose site the browser has cleared; null where nothing of theirs was in it. */
export const lossOf = ({ name, edits, at }: Mirror): string | null =>
  edits === 0
    ? null
    : `This browser has cleared “${name}” with its ${edits === 1 ? 'one change' : `${edits} changes`}, last kept on ` +
      `${new Date(at).toLocaleString()}. If you saved it to a file, open that file.`;
