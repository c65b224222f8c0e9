import { parseArgs } from 'node:util';
import packageFile from '../../../package.json' with { type: 'json' };
import { didYouMean } from '../../../routing/site/file/nearest-word.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import { done, type VerbOutcome, wrong } from '../outcome.ts';
import { OPTIONS, type VerbOptions } from './option-words.ts';
import { isVerb, usageOf, VERBS, type Verb } from './verb-words.ts';

/** What the words of a command ask for: a verb with its words and options, or what is to be said at once. */
export type WordsRead =
  | { readonly verb: Verb; readonly rest: readonly string[]; readonly options: VerbOptions }
  | { readonly verb: null; readonly outcome: VerbOutcome };

const USAGE = `overrow VERB ...

${usageOf(Object.keys(VERBS) as Verb[])}

A file named - is standard input. overrow VERB --help has the words of one verb, overrow --version the version.
--quiet, -q: nothing but results and what is wrong; of plan and check how each site stands, in a line.
Exit status: 0 done; 1 findings that fail (check); 2 the input or the words are wrong, with the reason on standard
error; nothing is on standard output then, but with --keep-going the lines of what could be done.

${CAUTIONS}
`;

/** Reads the words of one command. Options that its verb does not take are refused: none is ignored in silence. */
export function readWords(words: readonly string[]): WordsRead {
  const parsed = parsedWords(words);
  if (typeof parsed === 'string') return said(wrong(parsed));
  const { values, positionals } = parsed;
  const [first, ...rest] = positionals;
  const verb = first === 'help' ? rest[0] : first;
  if (values.version) return said(done(`overrow ${packageFile.version}\n`));
  if (values.help || first === 'help') return said(done(isVerb(verb) ? `${usageOf([verb])}\n\n${CAUTIONS}\n` : USAGE));
  // What is wrong comes last, where it is read.
  if (verb === undefined) return said(wrong(`${USAGE}\nname a verb`));
  if (!isVerb(verb)) return said(wrong(noVerb(verb)));
  const stray = strayOption(verb, Object.keys(values)) ?? emptyOption(verb, values);
  return stray === null ? { verb, rest, options: optionsIn(values) } : said(wrong(stray));
}

const said = (outcome: VerbOutcome): WordsRead => ({ verb: null, outcome });

const NAMES = Object.keys(VERBS);

const noVerb = (word: string): string =>
  `there is no verb "${word}"; the verbs are ${NAMES.join(', ')}${didYouMean(word, NAMES)}`;

/** What is wrong where an option is given that the verb does not take. */
function strayOption(verb: Verb, given: readonly string[]): string | null {
  const allowed: readonly string[] = VERBS[verb].options;
  const stray = given.find((name) => name !== 'quiet' && !allowed.includes(name));
  return stray === undefined ? null : `${verb} takes no --${stray}; ${helpFor(verb)}`;
}

/** What is wrong where an option is given nothing, as a shell does with a name that it does not know: no folder or file is meant by it. */
function emptyOption(verb: Verb, values: ParsedWords['values']): string | null {
  const empty = Object.entries(values).find(([, value]) => value === '')?.[0];
  return empty === undefined ? null : `${verb} --${empty}: nothing is given to it; ${helpFor(verb)}`;
}

type ParsedWords = ReturnType<typeof parse>;

const parse = (words: readonly string[]) => parseArgs({ args: [...words], allowPositionals: true, options: OPTIONS });

/** The words and options apart; a sentence where an option is wrong. */
function parsedWords(words: readonly string[]): ParsedWords | string {
  try {
    return parse(words);
  } catch (error) {
    const named = words.find(isVerb);
    const fault = optionFault(error);
    return `${named ? `${named}: ` : ''}${fault}${fault.endsWith('?') ? '' : ';'} ${helpFor(named)}`;
  }
}

/** The options as verbs read them: each switch on or off, and of the others those that were given. */
function optionsIn(values: ParsedWords['values']): VerbOptions {
  const off = Object.entries(OPTIONS).flatMap(([name, { type }]) =>
    type === 'boolean' ? [[inCode(name), false] as const] : [],
  );
  const given = Object.entries(values).map(([name, value]) => [inCode(name), value] as const);
  return Object.fromEntries([...off, ...given]) as VerbOptions;
}

/** `bid-day` as `bidDay`. */
const inCode = (name: string): string => name.replace(/-(.)/g, (_, letter: string) => letter.toUpperCase());

const helpFor = (verb: Verb | undefined): string => `see overrow ${verb === undefined ? '' : `${verb} `}--help`;

/** What is wrong with an option, without the parser's own advice. */
function optionFault(error: unknown): string {
  const says = error instanceof Error ? error.message : String(error);
  const unknown = /^Unknown option '([^']*)'/.exec(says);
  if (unknown)
    return `there is no option ${unknown[1]}${didYouMean(
      unknown[1]!,
      Object.keys(OPTIONS).map((name) => `--${name}`),
    )}`;
  return says.split('. ')[0]!.replace(/\.$/, '');
}
