import * as v from 'valibot';
import { sharedRoute } from '../../../../routing/propose/shared-route.ts';
import { nonNegativeFigure, wholeFigure, wholeNumber } from '../fields.ts';
import { answer, kind, refuse } from '../kind.ts';

/** Past this a graph is no lot. */
const MOST_NODES = 1_000_000;

const schema = v.strictObject({
  nodes: v.pipe(wholeFigure, v.maxValue(MOST_NODES)),
  root: wholeNumber,
  terminals: v.array(wholeNumber),
  edges: v.array(v.strictTuple([wholeNumber, wholeNumber, nonNegativeFigure, nonNegativeFigure])),
  price: v.strictObject({
    raceway: nonNegativeFigure,
    conductor: nonNegativeFigure,
    conduit: nonNegativeFigure,
    circuitsPerConduit: wholeFigure,
  }),
});

export const routeKind = kind(schema, (input, tell) => {
  const { nodes, root, terminals, edges, price } = input;
  const named = [
    { place: 'root', node: root },
    ...terminals.map((node, at) => ({ place: `terminals[${at}]`, node })),
    ...edges.flatMap(([u, w], at) => [
      { place: `edges[${at}][0]`, node: u },
      { place: `edges[${at}][1]`, node: w },
    ]),
  ];
  const errors = named.flatMap(({ place, node }) =>
    node < nodes ? [] : [{ place, says: `expected a node from 0 to ${nodes - 1}, got ${node}` }],
  );
  if (errors.length > 0) return { ok: false, errors };
  let result: ReturnType<typeof sharedRoute>;
  try {
    result = sharedRoute(input);
  } catch (error) {
    // The one thing that the schema cannot see is whether a terminal can be reached.
    if (error instanceof RangeError) return refuse('terminals', error.message);
    throw error;
  }
  tell(() => ({
    find: 'cost',
    formula:
      'sum over edges of length x (raceway x multiplier + conductor x circuits + conduit x circuits / circuits per conduit, rounded up)',
    values: { circuits: terminals.length, ...price, 'none can cost less than': result.bound },
    result: result.cost,
    source: 'routes by local search, the bound by a Lagrangian dual',
  }));
  const { cost, bound, paths } = result;
  return answer({ cost, bound, paths });
});
