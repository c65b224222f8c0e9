import { parseSync } from 'vite';

/** A function as it stands in a file. */
export interface FunctionAt {
  /** What it is called: by itself, by what it is given to, or by its line where it has no name. */
  readonly name: string;
  /** Lines from the first of its head to the last of its body. */
  readonly lines: number;
}

interface Node {
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly [part: string]: unknown;
}

const FUNCTIONS: ReadonlySet<string> = new Set([
  'FunctionDeclaration',
  'FunctionExpression',
  'ArrowFunctionExpression',
]);

const isNode = (part: unknown): part is Node =>
  typeof part === 'object' && part !== null && typeof (part as { type?: unknown }).type === 'string';

const nameIn = (part: unknown): string | undefined => {
  const { name, value } = (isNode(part) ? part : {}) as { readonly name?: unknown; readonly value?: unknown };
  return typeof name === 'string' ? name : typeof value === 'string' ? value : undefined;
};

/** How many of some rising numbers lie below a place. */
function sortedBefore(rising: readonly number[], place: number): number {
  let [low, high] = [0, rising.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (rising[middle]! < place) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Every function of a source text, those within others too. */
export function functionsIn(path: string, text: string): readonly FunctionAt[] {
  const { program, errors } = parseSync(path, text);
  if (errors.length > 0) throw new RangeError(`${path}: ${errors[0]!.message}`);
  const ends = [...text.matchAll(/\n/g)].map(({ index }) => index);
  const line = (place: number): number => 1 + sortedBefore(ends, place);
  const found: FunctionAt[] = [];
  const visit = (node: Node, given: string | undefined): void => {
    if (FUNCTIONS.has(node.type)) {
      const first = line(node.start);
      found.push({ name: nameIn(node.id) ?? given ?? `line ${first}`, lines: line(node.end) - first + 1 });
    }
    const own = node.type === 'VariableDeclarator' ? nameIn(node.id) : nameIn(node.key);
    for (const part of Object.values(node))
      for (const each of Array.isArray(part) ? part : [part]) if (isNode(each)) visit(each, own);
  };
  visit(program as unknown as Node, undefined);
  return found;
}
