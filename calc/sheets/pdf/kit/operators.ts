/** Operators of a content stream as they are drawn: a line of ASCII each. */
export interface Operators {
  readonly push: (words: string) => void;
  readonly bytes: () => Uint8Array;
}

/** Room for a page of a table, bytes; it doubles where there are more. */
const FIRST = 16 * 1024;

/**
 * An empty content stream. What is drawn goes into bytes at once: a sheet has operators by ten thousands, and none of
 * their words lives longer than it takes to write it.
 */
export function operators(): Operators {
  let bytes = new Uint8Array(FIRST);
  let end = 0;
  return {
    push: (words) => {
      const { length } = words;
      if (end + length >= bytes.length) {
        const larger = new Uint8Array(Math.max(2 * bytes.length, end + length + 1));
        larger.set(bytes);
        bytes = larger;
      }
      for (let i = 0; i < length; i++) bytes[end + i] = words.charCodeAt(i);
      bytes[end + length] = LINE_END;
      end += length + 1;
    },
    bytes: () => bytes.subarray(0, end),
  };
}

const LINE_END = 10;

/** Three figures after a point, without zeros at their end: what is left of a thousandth. */
const THOUSANDTHS = Array.from({ length: 1000 }, (_, i) =>
  i === 0 ? '' : `.${String(i).padStart(3, '0').replace(/0+$/, '')}`,
);

/** Up to it a thousandfold is sure to far less than `NEAR`; what is larger is rounded by the language. */
const MOST = 1e6;
const NEAR = 1e-4;

/** A place on a sheet to a thousandth, as `toFixed(3)` rounds it, without zeros at its end; what is no number throws. */
export function thousandths(value: number): string {
  const size = Math.abs(value);
  const whole = Math.round(size * 1000);
  // Near the middle between two the rounding of the product could choose the other.
  if (!(size < MOST) || Math.abs(Math.abs(size * 1000 - whole) - 0.5) < NEAR) return fixed(value, 3);
  if (whole === 0) return '0';
  const before = Math.trunc(whole / 1000);
  const words = `${before}${THOUSANDTHS[whole - before * 1000]!}`;
  return value < 0 ? `-${words}` : words;
}

/** A number with at most so many decimals, without zeros at their end; what is no number throws. */
export function fixed(value: number, decimals: number): string {
  if (!Number.isFinite(value)) throw new RangeError('a place on a sheet is a finite number');
  const words = value.toFixed(decimals).replace(/\.?0+$/, '');
  return words === '-0' ? '0' : words;
}
