import { parseArgs } from 'node:util';
import packageFile from '../../package.json' with { type: 'json' };
import { didYouMean } from '../../routing/site/file/nearest-word.ts';
import { CAUTIONS } from '../words/cautions.ts';
import type { Machine } from './machine.ts';
import { OPTIONS } from './option-words.ts';
import { done, type VerbOutcome, wrong } from './outcome.ts';
import { isVerb, usageOf, VERBS, type Verb } from './verb-words.ts';
import { calcVerb } from './verbs/calc.ts';
import { checkVerb } from './verbs/check.ts';
import { compareVerb } from './verbs/compare.ts';
import { dayVerb } from './verbs/day.ts';
import { handoverVerb } from './verbs/handover.ts';
import { issueVerb } from './verbs/issue.ts';
import { mergeVerb } from './verbs/merge.ts';
import { newVerb } from './verbs/new.ts';
import { planVerb } from './verbs/plan.ts';
import { pricesVerb } from './verbs/prices.ts';
import { proposeVerb } from './verbs/propose.ts';
import { schemaVerb } from './verbs/schema.ts';
import { studyVerb } from './verbs/study.ts';

const USAGE = `overrow VERB ...

${usageOf(Object.keys(VERBS) as Verb[])}

A file named - is standard input. overrow VERB --help has the words of one verb, overrow --version the version.
--quiet, -q: nothing but results and what is wrong; of plan and check how each site stands, in a line.
Exit status: 0 done; 1 findings that fail (check); 2 the input or the words are wrong, with the reason on standard
error; nothing is on standard output then, but with --keep-going the lines of what could be done.

${CAUTIONS}
`;

/** Runs the words of one command. Never throws for what a user can cause. */
export async function runWords(words: readonly string[], loud: Machine): Promise<VerbOutcome> {
  let parsed: ReturnType<typeof parse>;
  try {
    parsed = parse(words);
  } catch (error) {
    const named = words.find(isVerb);
    const fault = optionFault(error);
    return wrong(`${named ? `${named}: ` : ''}${fault}${fault.endsWith('?') ? '' : ';'} ${helpFor(named)}`);
  }
  const { values, positionals } = parsed;
  const [first, ...rest] = positionals;
  if (values.version) return done(`overrow ${packageFile.version}\n`);
  const verb = first === 'help' ? rest[0] : first;
  if (values.help || first === 'help') return done(isVerb(verb) ? `${usageOf([verb])}\n\n${CAUTIONS}\n` : USAGE);
  // What is wrong comes last, where it is read.
  if (verb === undefined) return wrong(`${USAGE}\nname a verb`);
  if (!isVerb(verb))
    return wrong(
      `there is no verb "${verb}"; the verbs are ${Object.keys(VERBS).join(', ')}${didYouMean(verb, Object.keys(VERBS))}`,
    );
  const allowed: readonly string[] = VERBS[verb].options;
  const stray = Object.keys(values).find((name) => name !== 'quiet' && !allowed.includes(name));
  // None is ignored in silence.
  if (stray !== undefined) return wrong(`${verb} takes no --${stray}; ${helpFor(verb)}`);
  const { quiet = false, all = false } = values;
  const machine = quiet ? { ...loud, progress: () => {} } : loud;
  const { json = false, explain = false, changes = false, replace = false, restocking = false } = values;
  const keepGoing = values['keep-going'] ?? false;
  const bidDay = values['bid-day'];
  const named = <
    Name extends
      | 'out'
      | 'prices'
      | 'only'
      | 'mark'
      | 'text'
      | 'set'
      | 'sheets'
      | 'page'
      | 'words'
      | 'supplier'
      | 'what'
      | 'cords'
      | 'load'
      | 'seconds'
      | 'row'
      | 'panel'
      | 'keep'
      | 'before'
      | 'later'
      | 'phase'
      | 'day'
      | 'stay'
      | 'stalls'
      | 'rows'
      | 'name',
  >(
    name: Name,
  ) => given(values, name);
  switch (verb) {
    case 'plan':
      return planVerb(
        rest,
        {
          json,
          all,
          quiet,
          keepGoing,
          bidDay,
          ...named('words'),
          ...named('out'),
          ...named('only'),
          ...named('set'),
          ...named('sheets'),
          ...named('page'),
          ...named('prices'),
        },
        machine,
      );
    case 'check':
      return checkVerb(rest, { json, all, quiet, ...named('phase') }, machine);
    case 'day':
      return dayVerb(rest, { json, ...named('day') }, machine);
    case 'compare':
      return compareVerb(
        rest,
        {
          json,
          changes,
          restocking,
          bidDay,
          ...named('words'),
          ...named('prices'),
          ...named('out'),
          ...named('only'),
          ...named('set'),
          ...named('sheets'),
          ...named('day'),
        },
        machine,
      );
    case 'propose':
      return proposeVerb(
        rest,
        {
          json,
          replace,
          ...named('what'),
          ...named('out'),
          ...named('cords'),
          ...named('load'),
          ...named('seconds'),
          ...named('row'),
          ...named('panel'),
          ...named('only'),
          ...named('keep'),
          ...named('before'),
          ...named('later'),
          ...named('prices'),
        },
        machine,
      );
    case 'issue':
      return issueVerb(rest, { replace, ...named('out'), ...named('mark'), ...named('text') }, machine);
    case 'merge':
      return mergeVerb(rest, { json, replace, ...named('out') }, machine);
    case 'handover':
      return handoverVerb(rest, { bidDay, ...named('out'), ...named('prices') }, machine);
    case 'study':
      return studyVerb(
        rest,
        { json, replace, ...named('out'), ...named('stay'), ...named('day'), ...named('seconds'), ...named('prices') },
        machine,
      );
    case 'calc':
      return calcVerb(rest, { explain, keepGoing }, machine);
    case 'new':
      return newVerb(
        rest,
        { replace, ...named('stalls'), ...named('rows'), ...named('name'), ...named('out') },
        machine,
      );
    case 'prices':
      return pricesVerb(rest, { ...named('prices'), ...named('supplier'), ...named('words') }, machine);
    case 'schema':
      return schemaVerb(rest);
  }
}

const parse = (words: readonly string[]) => parseArgs({ args: [...words], allowPositionals: true, options: OPTIONS });

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

/** The option by its name where it was given, to spread into a verb's options. */
const given = <Name extends string>(
  values: { readonly [key in Name]?: string },
  name: Name,
): { readonly [key in Name]?: string } => {
  const value = values[name];
  return value === undefined ? {} : ({ [name]: value } as { readonly [key in Name]?: string });
};
