import { kept } from '../../../../../routing/kept/kept.ts';

/** Texts in plain data, however deep, that have a sign which is not among those that are had; each once. */
export function textsIn(data: readonly unknown[], has: (code: number) => boolean): readonly string[] {
  const texts = data.flatMap((one) =>
    typeof one === 'object' && one !== null ? unusualIn(one) : typeof one === 'string' ? one : [],
  );
  return [...new Set(texts)].filter((text) => lacks(text, has));
}

/** Texts of signs beside those of every typeface. Kept: each file of a site looks through all of it for them. */
const unusualIn = kept((data: object): readonly string[] => {
  const found = new Set<string>();
  const look = (value: unknown): void => {
    if (typeof value === 'string') {
      if (!PLAIN.test(value)) found.add(value);
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
});

const PLAIN = /^[\x20-\x7e]*$/;

function lacks(text: string, has: (code: number) => boolean): boolean {
  if (PLAIN.test(text)) return false;
  for (const letter of text) if (!has(letter.codePointAt(0)!)) return true;
  return false;
}
