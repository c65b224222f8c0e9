/** Texts in plain data, however deep, that have a sign which is not among those that are had; each once. */
export function textsIn(data: readonly unknown[], has: (code: number) => boolean): readonly string[] {
  const found = new Set<string>();
  const look = (value: unknown): void => {
    if (typeof value === 'string') {
      if (lacks(value, has)) found.add(value);
    } else if (Array.isArray(value)) for (const one of value) look(one);
    else if (typeof value === 'object' && value !== null && !ArrayBuffer.isView(value))
      for (const [name, one] of Object.entries(value)) {
        // Names of fields are ours, but for tables that a person's names are the keys of.
        look(name);
        look(one);
      }
  };
  look(data);
  return [...found];
}

const PLAIN = /^[\x20-\x7e]*$/;

function lacks(text: string, has: (code: number) => boolean): boolean {
  if (PLAIN.test(text)) return false;
  for (const letter of text) if (!has(letter.codePointAt(0)!)) return true;
  return false;
}
