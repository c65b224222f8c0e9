import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fileKind } from '../../../web/underlay/picked/file-kind.ts';
import { xmlRoot } from '../../../web/underlay/picked/xml-root.ts';

const bytes = (text: string): Uint8Array<ArrayBuffer> => new Uint8Array(new TextEncoder().encode(text));

/** What may stand before the root element (XML 1.0, productions 22 to 28), each with signs that end other parts. */
const PROLOG = [
  ' \n\t',
  '<!---->',
  '<!-- <svg> is drawn below -->',
  '<?xml-stylesheet href="a.css"?>',
  '<!DOCTYPE svg>',
  '<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">',
  '<!DOCTYPE svg [\n  <!ENTITY ink "#1a1a1a">\n  <!-- ]> --> <!ENTITY sign ">">\n  <?keep ]>?>\n]>',
] as const;
const prolog = fc.array(fc.constantFrom(...PROLOG), { maxLength: 60 }).map((parts) => parts.join(''));

describe('the root of an XML text', () => {
  it('is found after any prolog', () => {
    fc.assert(
      fc.property(prolog, fc.constantFrom('svg', 'plan', 'x:svg'), (before, root) => {
        expect(xmlRoot(`${before}<${root} width="1"/>`)).toBe(root);
        expect(fileKind(bytes(`${before}<${root} width="1"/>`))).toBe(root === 'plan' ? null : 'svg');
      }),
    );
  });
  it('is not there where the prolog does not end', () => {
    for (const open of ['<!-- ', '<?xml ', '<!DOCTYPE svg [', '<!DOCTYPE svg "', ''])
      expect(xmlRoot(`<!-- a -->${open}`)).toBeNull();
  });
  // A way back through every share of the comments doubles with each one more: a few dozen of them would not return.
  it.each([['<!---->'], ['<!-- a -->\n'], ['<?a?>'], ['<!DOCTYPE svg>'], ['999\r\na\r\n'], ['\n']])(
    'of a head of nothing but %j is told at once',
    (part) => {
      expect(fileKind(bytes(part.repeat(4096 / part.length)))).toBeNull();
      expect(fileKind(bytes(`${part.repeat(100_000 / part.length)}<plan/>`))).toBeNull();
    },
  );
});
