/** A piece of equipment on a one-line, with what hangs on it. */
export interface OneLineNode<N> {
  readonly children: readonly N[];
}

/** A node with its place: which level, and across in columns of the sheet. */
export interface PlacedNode<N> {
  readonly node: N;
  readonly level: number;
  /** Middle of the node, in columns from the left. */
  readonly column: number;
  /** Place in the list of the node that it hangs on; -1 at the top. */
  readonly parent: number;
  /** What hangs on it continues on another sheet. */
  readonly isCut: boolean;
}

/** What is on one sheet: parents before what hangs on them. */
export type OneLinePage<N> = readonly PlacedNode<N>[];

/**
 * Trees laid out on sheets of so many columns: a column for each node that nothing hangs on, each other node over the
 * middle of what hangs on it. A tree with more columns continues on further sheets with the nodes above repeated; one that
 * is deeper than `levels` is cut there, and continues on a sheet of its own.
 */
export function oneLinePages<N extends OneLineNode<N>>(
  roots: readonly N[],
  columns: number,
  levels: number,
): readonly OneLinePage<N>[] {
  const pages: OneLinePage<N>[] = [];
  let waiting: readonly N[] = roots;
  while (waiting.length > 0) {
    const cut: N[] = [];
    const paths = waiting.flatMap((root) => pathsOf(root, levels, cut));
    for (let from = 0; from < paths.length; from += columns)
      pages.push(pageOf(paths.slice(from, from + columns), levels));
    waiting = cut;
  }
  return pages;
}

/** Every way from the top to a node that nothing hangs on, or to the last level. */
function pathsOf<N extends OneLineNode<N>>(root: N, levels: number, cut: N[]): N[][] {
  const walk = (path: readonly N[]): N[][] => {
    const node = path.at(-1)!;
    if (node.children.length === 0) return [[...path]];
    if (path.length >= levels) {
      cut.push(...node.children);
      return [[...path]];
    }
    return node.children.flatMap((child) => walk([...path, child]));
  };
  return walk([root]);
}

function pageOf<N extends OneLineNode<N>>(paths: readonly (readonly N[])[], levels: number): OneLinePage<N> {
  interface Making {
    readonly node: N;
    readonly level: number;
    readonly parent: number;
    first: number;
    last: number;
  }
  const nodes: Making[] = [];
  const places = new Map<N, number>();
  paths.forEach((path, column) => {
    path.forEach((node, level) => {
      const known = places.get(node);
      if (known !== undefined) {
        nodes[known]!.last = column;
        return;
      }
      places.set(node, nodes.length);
      const above = path[level - 1];
      nodes.push({ node, level, parent: above === undefined ? -1 : places.get(above)!, first: column, last: column });
    });
  });
  return nodes.map(({ node, level, parent, first, last }) => ({
    node,
    level,
    parent,
    column: (first + last) / 2,
    isCut: node.children.length > 0 && level === levels - 1,
  }));
}
