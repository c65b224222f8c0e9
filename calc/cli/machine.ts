import type { FontBytes } from '../sheets/pdf/lettering.ts';

/** The machine as the verbs see it: handed in, so that a test can hand in another. */
export interface Machine {
  /** Text of a file; throws with the system's message where it cannot be read. */
  readonly read: (path: string) => string;
  /** Writes a file, making its folder where it is missing. */
  readonly write: (path: string, content: string | Uint8Array) => void;
  /** The day, as it is printed on drawings. */
  readonly today: () => string;
  /** The typeface of the drawing set. */
  readonly fonts: () => Promise<FontBytes>;
  /** All of standard input. */
  readonly input: () => string;
}
