import type { NewLinearProgram } from '../day/optimum/linear-program.ts';
import type { Packer } from '../sheets/packing.ts';
import type { FontBytes } from '../sheets/pdf/kit/lettering/lettering.ts';
import type { Crew } from './writing/crew.ts';

/** The machine as the verbs see it: handed in, so that a test can hand in another. */
export interface Machine {
  /** Text of a file, or of standard input where it is named `-`; throws, in words, where it cannot be read. */
  readonly read: (path: string) => string;
  /** Bytes of a file; throws, in words, where it cannot be read. */
  readonly bytes: (path: string) => Uint8Array;
  /** Writes a file, making its folder where it is missing; throws, in words, where it cannot. */
  readonly write: (path: string, content: string | Uint8Array) => void;
  /** Takes a file away; throws, in words, where it cannot. */
  readonly remove: (path: string) => void;
  /** Makes a folder where it is missing; throws, in words, where it cannot: asked before long work is begun. */
  readonly makeFolder: (path: string) => void;
  /** Something stands at a path that writing there would lose. */
  readonly isTaken: (path: string) => boolean;
  /** The day, as it is printed on drawings. */
  readonly today: () => string;
  /** The typeface of the drawing set. */
  readonly fonts: () => Promise<FontBytes>;
  /** Packs what is written; without one it is packed as in any engine. */
  readonly packer?: Packer;
  /** What solves linear programs, loaded when it is asked for. */
  readonly solver: () => Promise<NewLinearProgram>;
  /** All of standard input. */
  readonly input: () => string;
  /**
   * Whether long work may go on: until so many seconds have passed, null for as long as it takes, or somebody interrupts
   * it; asked with a share, until that share of them has.
   */
  readonly mayGoOn: (seconds: number | null) => (share?: number) => boolean;
  /** Says, in place of what it said last, how far long work is; empty when it is over. */
  readonly progress: (line: string) => void;
  /** A crew for so many pieces of work, large or small: this thread and one more; none where one thread does it all. */
  readonly crew?: (pieces: number, isMuch: boolean) => Crew;
}
