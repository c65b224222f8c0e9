/** What is told of a rule: in the tool with all that is known of its source, on a drawing with what it goes by. */
export interface RuleTold {
  /** What the trade calls it. */
  readonly name: string;
  /** Unit of the default; '' for a word or a plain count. Feet are shown in the units of the file. */
  readonly unit: string;
  /** What the rule decides. */
  readonly meaning: string;
  /** Where the default comes from, and how far it is to be trusted. */
  readonly source: string;
  /** What it goes by, fit for a drawing: a code section, a standard, or a criterion of the project. */
  readonly basis: string;
  /** What an engineer is asked to confirm before it is built by; absent where a code or standard sets it. */
  readonly confirm?: string;
}

/** Words that sources and bases share. */
export const PRACTICE = 'common practice, no source';
/** Source and basis of a rule that the code sets: calc says where, for its tables are by edition. */
export const BY_CODE = 'the electrical code';
export const OWN = 'a convention of this planner';
export const CRITERION = 'project criterion';
export const TRADE = 'common practice';
