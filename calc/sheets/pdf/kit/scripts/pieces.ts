import { EMOJI_OR_SIGN } from './clusters.ts';
import { directed } from './direction.ts';
import type { FaceName } from './faces.ts';
import { type AnyFace, faceHas } from './signs.ts';

/** What of a text is set in one typeface and direction. */
export interface TextPiece {
  readonly face: AnyFace;
  /** Odd: from right to left. */
  readonly level: number;
  readonly text: string;
}

/** Marks, and the joiners that change how letters about them are drawn. */
const MARK = /^[\p{M}\u200c\u200d]$/u;
const GREEK = /^[\u0370-\u03ff]$/u;

/** A text in pieces, in the order in which it is read; each sign in a typeface that has it, where one does. */
export function scriptPieces(text: string, faces: readonly FaceName[]): readonly TextPiece[] {
  const { levels, mirrored } = directed(text);
  const choose = chooser(text, faces);
  const pieces: { face: AnyFace; level: number; text: string }[] = [];
  let at = 0;
  for (const letter of text.match(EMOJI_OR_SIGN) ?? []) {
    const last = pieces.at(-1);
    const level = levels[at]!;
    const code = letter.codePointAt(0)!;
    const isWithLast = last !== undefined && MARK.test(letter) && (faceHas(last.face, code) || isJoiner(letter));
    const face = isWithLast ? last.face : choose(letter);
    const printed = mirrored.get(at) ?? letter;
    if (last && last.face === face && (last.level === level || isWithLast)) last.text += printed;
    else pieces.push({ face, level, text: printed });
    at += letter.length;
  }
  return pieces;
}

/** The typefaces that texts need beside that of the set, of those in `order` and in that order. */
export function facesFor(printed: readonly string[], order: readonly FaceName[]): readonly FaceName[] {
  const needed = new Set<FaceName>();
  for (const { face } of printed.flatMap((text) => scriptPieces(text, order))) if (face !== 'set') needed.add(face);
  return order.filter((face) => needed.has(face));
}

const isJoiner = (letter: string): boolean => letter === '\u200c' || letter === '\u200d';

/** The typeface of each sign of a text: that of the set where it has it, else the first that has all of the text's Han. */
function chooser(text: string, faces: readonly FaceName[]): (letter: string) => AnyFace {
  const han = [...text].filter((letter) => /^\p{Script=Han}$/u.test(letter)).map((letter) => letter.codePointAt(0)!);
  const whole = han.length === 0 ? undefined : faces.find((face) => han.every((code) => faceHas(face, code)));
  const order = whole === undefined ? faces : [whole, ...faces];
  // The set has the few letters of Greek that stand for quantities: in a Greek word they are of its own typeface.
  const isGreek = [...text].some((letter) => GREEK.test(letter) && !faceHas('set', letter.codePointAt(0)!));
  const hasEmoji = faces.includes('emoji');
  return (letter) => {
    const code = letter.codePointAt(0)!;
    // An emoji of several signs is one glyph, also where each is a letter or figure elsewhere.
    if (hasEmoji && letter.length > String.fromCodePoint(code).length) return 'emoji';
    if (isGreek && GREEK.test(letter) && faceHas('greek', code)) return 'greek';
    return faceHas('set', code) ? 'set' : (order.find((face) => faceHas(face, code)) ?? 'set');
  };
}
