/** A text of a DXF by its groups: a group code on one line, its value on the next. */
export interface Groups {
  /** Goes to the next group; false at the end of the text. */
  readonly next: () => boolean;
  /** Code of the group that it stands at; NaN where the line is none. */
  readonly code: () => number;
  readonly value: () => string;
  /** The line that the code stands on, from 1, and where that line begins in the text. */
  readonly line: () => number;
  readonly from: () => number;
}

const [NEW_LINE, RETURN, SPACE] = [10, 13, 32];

/**
 * Goes through a text from a place and a line on, without cutting it: of what is not asked for no letter is copied. Values
 * are trimmed, so that a return before the end of a line does no harm.
 */
export function groupsOf(text: string, end: number, place = 0, line = 1): Groups {
  let [at, value, next, row] = [place, place, place, line - 2];
  /** The place after the line that begins here; past the text where it is the last. */
  const after = (from: number): number => {
    for (let i = from; i < text.length; i++) if (text.charCodeAt(i) === end) return i + 1;
    return text.length + 1;
  };
  return {
    next: () => {
      const on = after(next);
      // Both lines have to be there, even if nothing stands on the second.
      if (on > text.length) return false;
      at = next;
      value = on;
      next = after(on);
      row += 2;
      return true;
    },
    code: () => codeIn(text, at, value - 1),
    value: () => {
      let to = next - 1;
      if (to > value && text.charCodeAt(to - 1) === RETURN) to -= 1;
      const [first, last] = [text.charCodeAt(value), text.charCodeAt(to - 1)];
      const own = text.slice(value, to);
      return (first > SPACE && first < 127 && last > SPACE && last < 127) || to <= value ? own : own.trim();
    },
    line: () => row,
    from: () => at,
  };
}

/** What ends the lines of a text. */
export const endOf = (text: string): number => (text.includes('\n') ? NEW_LINE : RETURN);

/** The line that begins in a text at a place, in a few letters for a message. */
export function lineAt(text: string, end: number, from: number): string {
  const stop = text.indexOf(String.fromCharCode(end), from);
  return JSON.stringify(
    text
      .slice(from, stop < 0 ? text.length : stop)
      .trim()
      .slice(0, 24),
  );
}

/** A group code, a whole number of at most four digits; NaN where a line is none. */
function codeIn(text: string, from: number, to: number): number {
  let code = 0;
  let digits = 0;
  let negative = false;
  let over = false;
  for (let i = from; i < to; i++) {
    const sign = text.charCodeAt(i);
    if (sign >= 48 && sign <= 57 && !over) {
      code = 10 * code + sign - 48;
      digits += 1;
    } else if (sign === 45 && digits === 0 && !negative && !over) negative = true;
    else if (sign === 32 || sign === 9 || sign === 13 || sign === 0xfeff) over = digits > 0 || negative;
    else return Number.NaN;
  }
  return digits < 1 || digits > 4 ? Number.NaN : negative ? -code : code;
}
