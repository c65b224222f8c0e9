import { expect, test } from 'vitest';
import { graphOf } from '../../../routing/network/graph.ts';
import { networkOf } from '../../../routing/network/network.ts';
import { raceway } from './sites.ts';

// A main with a branch 0.2 ft off it, and a second raceway along its first half.
const network = networkOf(
  [
    raceway('A', [
      [0, 0, 11],
      [40, 0, 11],
    ]),
    raceway('B', [
      [10, 0.2, 11],
      [10, 30, 11],
    ]),
    raceway('C', [
      [0, 0, 11],
      [20, 0, 11],
    ]),
  ],
  0.25,
);

test('the graph has the nodes of the network with their places', () => {
  const graph = graphOf(network);
  const places = graph.mapNodes((_, { x, y, z }) => [x, y, z].join(' ')).toSorted();
  expect(places).toEqual(['0 0 11', '10 0 11', '10 0 11', '10 0.2 11', '10 30 11', '20 0 11', '40 0 11'].toSorted());
});
test('its edges have length and raceway, none across a gap, two where two raceways lie together', () => {
  const edges = graphOf(network).mapEdges((_, { raceway: on, length }) => `${on} ${length.toFixed(3)}`);
  expect(edges.toSorted()).toEqual(
    // The branch's end is within the tolerance of both A and C, and is tied to each.
    ['A 10.000', 'A 10.000', 'A 20.000', 'B 29.800', 'C 10.000', 'C 10.000', 'null 0.200', 'null 0.200'].toSorted(),
  );
});
test('it is built once', () => expect(graphOf(network)).toBe(graphOf(network)));
