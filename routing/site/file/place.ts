/** The way from the whole file to a part of it: field names and indexes. */
export type Path = readonly (string | number)[];

const PLAIN_NAME = /^[A-Za-z_$][\w$]*$/;

/** A path as people read it: `chargers[3].drop`, `vehicles["my van"].length`, '' for the whole file. */
export function placeOf(path: Path): string {
  let place = '';
  for (const step of path) {
    if (typeof step === 'number') place += `[${step}]`;
    else if (PLAIN_NAME.test(step)) place += place === '' ? step : `.${step}`;
    else place += `[${JSON.stringify(step)}]`;
  }
  return place;
}

/** What is wrong at the end of a path: what was expected and what came. */
export interface Fault {
  readonly path: Path;
  readonly says: string;
}

/** Hears faults; the words are made only where they are wanted. The path is the teller's own and changes after the call. */
export type TellFault = (path: Path, says: () => string) => void;

/** What is wrong with a site file, and where. */
export interface SiteError {
  /** `chargers[3].drop`; '' for the whole file. */
  readonly place: string;
  /** What was expected and what came. */
  readonly says: string;
  /** Line of the text, from 1, where the place is or, of something missing, what it is missing from. */
  readonly line?: number;
}
