import { parseArgs } from 'node:util';
import { CAUTIONS } from '../cautions.ts';
import type { Machine } from './machine.ts';
import { done, type Outcome, wrong } from './outcome.ts';
import { calcVerb } from './verbs/calc.ts';
import { checkVerb } from './verbs/check.ts';
import { compareVerb } from './verbs/compare.ts';
import { planVerb } from './verbs/plan.ts';
import { proposeVerb } from './verbs/propose.ts';
import { schemaVerb } from './verbs/schema.ts';

const USAGE = `overrow VERB ...

  plan FILE... [--json]     the plan of each site file: a summary, or one line of JSON a file
  plan FILE... --out DIR    every sheet of each, written to that folder [--prices CSV]
  check FILE... [--json]    the findings, which checks were made and what nobody looked at; exit status 1
                            where a finding fails
  compare FILE FILE...      two to six alternatives side by side, differences first [--json] [--prices CSV];
                            with --changes, what the second of two versions changes in the first,
                            and with --out DIR the drawing of it, clouded
  propose FILE --what WHAT --out FILE   the site with drops, raceways or equipment proposed, or all,
                            written to that file [--cords N] a drop [--prices CSV] [--json]
  calc KIND [--explain]     one calculation: JSON objects on standard input, one a line; one line out for each
  schema                    the JSON Schema of the site file

Exit status: 0 done; 1 findings that fail (check); 2 the input or the words are wrong.

${CAUTIONS}
`;

/** Runs the words of one command. Never throws for what a user can cause. */
export async function runWords(words: readonly string[], machine: Machine): Promise<Outcome> {
  let parsed: ReturnType<typeof parse>;
  try {
    parsed = parse(words);
  } catch (error) {
    return wrong(`${error instanceof Error ? error.message : String(error)}\n\n${USAGE}`);
  }
  const { values, positionals } = parsed;
  const [verb, ...rest] = positionals;
  if (values.help || verb === 'help') return done(USAGE);
  switch (verb) {
    case 'plan':
      return (
        only(values, ['json', 'out', 'prices'], verb) ??
        planVerb(rest, { json: values.json ?? false, ...given(values, 'out'), ...given(values, 'prices') }, machine)
      );
    case 'check':
      return only(values, ['json'], verb) ?? checkVerb(rest, { json: values.json ?? false }, machine);
    case 'compare':
      return (
        only(values, ['json', 'changes', 'prices', 'out'], verb) ??
        compareVerb(
          rest,
          {
            json: values.json ?? false,
            changes: values.changes ?? false,
            ...given(values, 'prices'),
            ...given(values, 'out'),
          },
          machine,
        )
      );
    case 'propose':
      return (
        only(values, ['what', 'out', 'cords', 'prices', 'json'], verb) ??
        proposeVerb(
          rest,
          {
            json: values.json ?? false,
            ...given(values, 'what'),
            ...given(values, 'out'),
            ...given(values, 'cords'),
            ...given(values, 'prices'),
          },
          machine,
        )
      );
    case 'calc':
      return only(values, ['explain'], verb) ?? calcVerb(rest, { explain: values.explain ?? false }, machine);
    case 'schema':
      return only(values, [], verb) ?? schemaVerb(rest);
    default:
      return wrong(`${verb === undefined ? 'name a verb' : `there is no verb "${verb}"`}\n\n${USAGE}`);
  }
}

const parse = (words: readonly string[]) =>
  parseArgs({
    args: [...words],
    allowPositionals: true,
    options: {
      json: { type: 'boolean' },
      explain: { type: 'boolean' },
      changes: { type: 'boolean' },
      prices: { type: 'string' },
      out: { type: 'string' },
      what: { type: 'string' },
      cords: { type: 'string' },
      help: { type: 'boolean', short: 'h' },
    },
  });

/** The option by its name where it was given, to spread into a verb's options. */
const given = <Name extends string>(
  values: { readonly [key in Name]?: string },
  name: Name,
): { readonly [key in Name]?: string } => {
  const value = values[name];
  return value === undefined ? {} : ({ [name]: value } as { readonly [key in Name]?: string });
};

/** Refuses an option that the verb does not take, so that none is ignored in silence. */
function only(values: object, allowed: readonly string[], verb: string): Outcome | undefined {
  const stray = Object.keys(values).find((name) => !allowed.includes(name));
  return stray === undefined ? undefined : wrong(`${verb} takes no --${stray}\n\n${USAGE}`);
}
