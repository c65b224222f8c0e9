import { readdirSync, readFileSync } from 'node:fs';

/** One example of a docstring: an expression, what it is said to give, and where that is from. */
export interface Example {
  readonly of: string;
  readonly source: string;
  readonly expression: string;
  readonly expected: string;
}

/** The docstrings that stand before what each file under `folder` exports, by its name. */
export function docstrings(folder: string): ReadonlyMap<string, string> {
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts'));
  return new Map(
    files.flatMap((name) =>
      [
        ...readFileSync(`${folder}/${name}`, 'utf8').matchAll(
          /\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\nexport (?:function|const) (\w+)/g,
        ),
      ].map(([, text = '', of = '']) => [of, text.replaceAll(/^ *\* ?/gm, '')] as const),
    ),
  );
}

/**
 * The examples of a docstring: after `@example`, a comment with the source, then expressions over one or more lines, each
 * with its value in a comment at its end.
 */
export function examplesOf(of: string, docstring: string): Example[] {
  const [, text = ''] = docstring.split('@example\n');
  const found: Example[] = [];
  let source = '';
  let lines: string[] = [];
  for (const line of text.trimEnd().split('\n')) {
    const [, code = '', comment] = /^(.*?)(?:\/\/ (.*))?$/.exec(line) ?? [];
    if (code.trim() === '') {
      source = comment ?? source;
      continue;
    }
    lines.push(code);
    if (comment === undefined) continue;
    found.push({ of, source, expression: lines.join('\n'), expected: comment });
    lines = [];
  }
  if (lines.length > 0) throw new Error(`${of}: an example without its value: ${lines.join(' ')}`);
  return found;
}
