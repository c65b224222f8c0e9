/** Every option, and whether a value follows it. */
export const OPTIONS = {
  json: { type: 'boolean' },
  all: { type: 'boolean' },
  quiet: { type: 'boolean', short: 'q' },
  explain: { type: 'boolean' },
  changes: { type: 'boolean' },
  restocking: { type: 'boolean' },
  'keep-going': { type: 'boolean' },
  replace: { type: 'boolean' },
  prices: { type: 'string' },
  'bid-day': { type: 'string' },
  words: { type: 'string' },
  supplier: { type: 'string' },
  out: { type: 'string' },
  only: { type: 'string' },
  mark: { type: 'string' },
  text: { type: 'string' },
  set: { type: 'string' },
  sheets: { type: 'string' },
  page: { type: 'string' },
  what: { type: 'string' },
  cords: { type: 'string' },
  load: { type: 'string' },
  feeders: { type: 'string' },
  seconds: { type: 'string' },
  row: { type: 'string' },
  panel: { type: 'string' },
  keep: { type: 'string' },
  before: { type: 'string' },
  later: { type: 'string' },
  phase: { type: 'string' },
  day: { type: 'string' },
  stay: { type: 'string' },
  stalls: { type: 'string' },
  rows: { type: 'string' },
  name: { type: 'string' },
  help: { type: 'boolean', short: 'h' },
  version: { type: 'boolean', short: 'v' },
} as const;
export type OptionName = keyof typeof OPTIONS;

type InCode<Name extends string> = Name extends `${infer First}-${infer Then}` ? `${First}${Capitalize<Then>}` : Name;
type OfType<Type extends string> = {
  [Name in OptionName]: (typeof OPTIONS)[Name]['type'] extends Type ? Name : never;
}[OptionName];

/** What was asked of a verb, by the names that they have in code (`bidDay` of `bid-day`). */
export type VerbOptions = { readonly [Name in OfType<'boolean'> as InCode<Name>]: boolean } & {
  readonly [Name in OfType<'string'> as InCode<Name>]?: string;
};
