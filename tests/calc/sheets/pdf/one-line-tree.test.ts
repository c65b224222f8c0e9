import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { oneLinePages } from '../../../../calc/sheets/pdf/one-line/one-line-tree.ts';

interface Node {
  readonly id: number;
  readonly children: readonly Node[];
}

/** A tree from a list of parents: node i hangs on node parents[i] % i. */
function treeFrom(parents: readonly number[]): Node {
  const children: Node[][] = [[], ...parents.map(() => [])];
  const nodes: Node[] = children.map((list, id) => ({ id, children: list }));
  parents.forEach((parent, i) => {
    children[parent % (i + 1)]!.push(nodes[i + 1]!);
  });
  return nodes[0]!;
}

const trees = fc.array(fc.nat({ max: 1000 }), { maxLength: 25 }).map(treeFrom);
const all = (node: Node): readonly Node[] => [node, ...node.children.flatMap(all)];

describe('a supply over sheets', () => {
  test('every node stands on a sheet, under what feeds it or at the top', () => {
    fc.assert(
      fc.property(trees, fc.integer({ min: 1, max: 5 }), fc.integer({ min: 2, max: 4 }), (root, columns, levels) => {
        const pages = oneLinePages([root], columns, levels);
        const drawn = new Set(pages.flatMap((page) => page.map(({ node }) => node.id)));
        expect(drawn.size).toBe(all(root).length);
        for (const page of pages)
          for (const { node, parent, level } of page) {
            if (level === 0) expect(parent).toBe(-1);
            else expect(page[parent]!.node.children).toContain(node);
          }
      }),
    );
  });
  test('no sheet has more columns or levels than it may, and no two nodes of a level share a column', () => {
    fc.assert(
      fc.property(trees, fc.integer({ min: 1, max: 5 }), fc.integer({ min: 2, max: 4 }), (root, columns, levels) => {
        for (const page of oneLinePages([root], columns, levels)) {
          for (const { column, level } of page) {
            expect(column).toBeLessThanOrEqual(columns - 1);
            expect(level).toBeLessThan(levels);
          }
          const places = page.map(({ column, level }) => `${level} ${column}`);
          expect(new Set(places).size).toBe(places.length);
        }
      }),
    );
  });
  test('a small supply is one sheet with the source over the middle of its panels', () => {
    const leaf = (id: number): Node => ({ id, children: [] });
    const source: Node = { id: 0, children: [leaf(1), leaf(2), leaf(3)] };
    const [page, ...others] = oneLinePages([source], 4, Infinity);
    expect(others).toEqual([]);
    expect(page!.map(({ node, column, level }) => [node.id, column, level])).toEqual([
      [0, 1, 0],
      [1, 0, 1],
      [2, 1, 1],
      [3, 2, 1],
    ]);
  });
});
