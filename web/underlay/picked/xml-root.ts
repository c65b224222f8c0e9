/** Where what begins at a place ends, and null where it never does. */
type End = number | null;

const SPACE = /\s/;

/**
 * The name of the root element of an XML text, after its declaration, comments and DOCTYPE (XML 1.0, production 22);
 * null where there is none. Every sign is read once: a file may begin with any number of comments.
 */
export function xmlRoot(text: string): string | null {
  for (let at: End = 0; at !== null && at < text.length; ) {
    if (SPACE.test(text[at]!)) at += 1;
    else if (text.startsWith('<!--', at)) at = after(text, '-->', at + 4);
    else if (text.startsWith('<?', at)) at = after(text, '?>', at + 2);
    else if (/^<!doctype$/i.test(text.slice(at, at + 9))) at = afterDoctype(text, at + 9);
    else return /^<([^\s/>]+)[\s/>]/.exec(text.slice(at, at + 100))?.[1] ?? null;
  }
  return null;
}

function after(text: string, sign: string, from: number): End {
  const found = text.indexOf(sign, from);
  return found < 0 ? null : found + sign.length;
}

/** The end of a DOCTYPE: its quoted names, and the declarations between its brackets, may hold a `>` of their own. */
function afterDoctype(text: string, from: number): End {
  let inside = false;
  for (let at: End = from; at !== null && at < text.length; ) {
    const sign = text[at]!;
    if (sign === '"' || sign === "'") at = after(text, sign, at + 1);
    else if (text.startsWith('<!--', at)) at = after(text, '-->', at + 4);
    else if (text.startsWith('<?', at)) at = after(text, '?>', at + 2);
    else if (sign === '>' && !inside) return at + 1;
    else {
      if (sign === '[') inside = true;
      if (sign === ']') inside = false;
      at += 1;
    }
  }
  return null;
}
