import { readJson } from './json-text.ts';
import { lineFinder } from './line-finder.ts';
import type { Path } from './place.ts';

/** The wanted paths as a tree; `line` is 0 as long as its place was not met. */
interface Branch {
  line: number;
  readonly steps: Map<string | number, Branch>;
}

/**
 * The lines of a JSON text on which these paths stand; of a path that is not in it, the line of the part that would
 * hold it. Reads the text once more, so that reading a sound file need not keep places.
 */
export function linesOfPaths(text: string, paths: readonly Path[]): readonly number[] {
  const root: Branch = { line: 1, steps: new Map() };
  for (const path of paths) grow(root, path);
  const lineOf = lineFinder(text);
  if (root.steps.size > 0) {
    readJson(text, (path, at) => {
      const branch = branchAt(root, path);
      if (branch !== undefined) branch.line = lineOf(at).line;
    });
  }
  return paths.map((path) => lastLine(root, path));
}

function grow(root: Branch, path: Path): void {
  let branch = root;
  for (const step of path) {
    const next: Branch = branch.steps.get(step) ?? { line: 0, steps: new Map() };
    branch.steps.set(step, next);
    branch = next;
  }
}

function branchAt(root: Branch, path: Path): Branch | undefined {
  let branch: Branch | undefined = root;
  for (let depth = 0; branch !== undefined && depth < path.length; depth++) branch = branch.steps.get(path[depth] ?? 0);
  return branch;
}

function lastLine(root: Branch, path: Path): number {
  let line = 1;
  let branch: Branch | undefined = root;
  for (const step of path) {
    branch = branch?.steps.get(step);
    line = branch?.line || line;
  }
  return line;
}
