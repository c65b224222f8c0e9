import { kept } from '../kept/kept.ts';
import type { Raceway } from '../site/site.ts';
import { joinedSets } from './joined-sets.ts';
import { type Joints, jointsOf } from './joints.ts';
import { type Legs, legsOf } from './legs.ts';
import { type Stops, stopsOf, type Ties, tiesOf } from './stops.ts';

/**
 * The raceways as one network in flat arrays: nodes at vertices, touch points and crossings; edges along the raceways,
 * and across the gaps of joints at their true length. Points closer than `COINCIDENT` are one node, so no edge has
 * no length. Nodes of one component stand together, and so do their half-edges: `h` goes from `tail[h]` to `head[h]`,
 * and the same edge walked the other way is `twin[h]`. The numbering follows from the raceways' ids alone.
 */
export interface Network {
  readonly legs: Legs;
  readonly nodes: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
  /** Half-edges that leave node n: `first[n]` to `first[n + 1] - 1`. */
  readonly first: Int32Array;
  readonly tail: Int32Array;
  readonly head: Int32Array;
  readonly twin: Int32Array;
  readonly weight: Float64Array;
  /** Leg that the half-edge lies on; -1 across a joint's gap. */
  readonly leg: Int32Array;
  /** Stops of leg i in order along it: entries `firstStop[i]` to `firstStop[i + 1] - 1` of the two lists below. */
  readonly firstStop: Int32Array;
  readonly stopNode: Int32Array;
  readonly stopAlong: Float64Array;
  /** Component of each raceway by rank; nodes of component c are `firstNode[c]` to `firstNode[c + 1] - 1`. */
  readonly component: Int32Array;
  readonly firstNode: Int32Array;
}

/**
 * The network of the raceways, joined where they touch or cross within `joinTolerance` feet. What
 * moves no raceway builds nothing.
 */
export const networkOf = kept((raceways: readonly Raceway[], joinTolerance: number): Network => {
  if (!(joinTolerance >= 0)) throw new RangeError(`the join tolerance must be 0 ft or more, got ${joinTolerance}`);
  return buildNetwork(raceways, joinTolerance);
});

function buildNetwork(raceways: readonly Raceway[], joinTolerance: number): Network {
  const legs = legsOf(raceways);
  const joints = jointsOf(legs, joinTolerance);
  const stops = stopsOf(legs, joints);
  const ties = tiesOf(legs, joints, stops);
  const { component, components } = componentsOf(legs, joints);
  return { legs, component, ...numberNodes(legs, stops, ties, component, components) };
}

function componentsOf(legs: Legs, joints: Joints): { component: Int32Array; components: number } {
  const together = joinedSets(legs.raceways.length);
  for (let e = 0; e < joints.leg.length; e += 2)
    together.join(legs.rank[joints.leg[e]!]!, legs.rank[joints.leg[e + 1]!]!);
  const component = new Int32Array(legs.raceways.length);
  let components = 0;
  for (let r = 0; r < component.length; r++) {
    const first = together.first(r);
    component[r] = first === r ? components++ : component[first]!;
  }
  return { component, components };
}

function numberNodes(
  legs: Legs,
  stops: Stops,
  ties: Ties,
  component: Int32Array,
  components: number,
): Omit<Network, 'legs' | 'component'> {
  const order = legsByComponent(legs, component, components);
  const numberOf = new Int32Array(stops.count).fill(-1);
  const x = new Float64Array(stops.count);
  const y = new Float64Array(stops.count);
  const z = new Float64Array(stops.count);
  const firstNode = new Int32Array(components + 1);
  const stopNode = new Int32Array(stops.raw.length);
  // One edge for each stop but the first of a leg, and one for each gap, at the most.
  const most = stops.raw.length - legs.count + ties.gap.length;
  const from = new Int32Array(most);
  const to = new Int32Array(most);
  const weight = new Float64Array(most);
  const on = new Int32Array(most);
  let edges = 0;
  let nodes = 0;
  let reached = 0;
  for (const i of order) {
    while (reached < component[legs.rank[i]!]!) firstNode[++reached] = nodes;
    for (let s = stops.firstStop[i]!; s < stops.firstStop[i + 1]!; s++) {
      const raw = ties.one(stops.raw[s]!);
      if (numberOf[raw] === -1) {
        x[nodes] = stops.x[stops.raw[s]!]!;
        y[nodes] = stops.y[stops.raw[s]!]!;
        z[nodes] = stops.z[stops.raw[s]!]!;
        numberOf[raw] = nodes++;
      }
      stopNode[s] = numberOf[raw]!;
      if (s === stops.firstStop[i] || stopNode[s] === stopNode[s - 1]) continue;
      from[edges] = stopNode[s - 1]!;
      to[edges] = stopNode[s]!;
      weight[edges] = stops.along[s]! - stops.along[s - 1]!;
      on[edges++] = i;
    }
  }
  while (reached < components) firstNode[++reached] = nodes;
  for (let j = 0; j < ties.gap.length; j++) {
    from[edges] = numberOf[ties.from[j]!]!;
    to[edges] = numberOf[ties.to[j]!]!;
    weight[edges] = ties.gap[j]!;
    on[edges++] = -1;
  }
  return {
    nodes,
    x: x.subarray(0, nodes),
    y: y.subarray(0, nodes),
    z: z.subarray(0, nodes),
    ...halfEdges(nodes, { count: edges, from, to, length: weight, on }),
    firstStop: stops.firstStop,
    stopNode,
    stopAlong: stops.along,
    firstNode,
  };
}

function legsByComponent({ rank, count }: Legs, component: Int32Array, components: number): Int32Array {
  const next = new Int32Array(components + 1);
  for (let i = 0; i < count; i++) next[component[rank[i]!]! + 1]!++;
  for (let c = 0; c < components; c++) next[c + 1]! += next[c]!;
  const order = new Int32Array(count);
  for (let i = 0; i < count; i++) order[next[component[rank[i]!]!]!++] = i;
  return order;
}

/** Edges between nodes: the first `count` of each list. */
interface Edges {
  readonly count: number;
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly length: Float64Array;
  /** Leg; -1 across a gap. */
  readonly on: Int32Array;
}

function halfEdges(
  nodes: number,
  { count: edges, from, to, length, on }: Edges,
): Pick<Network, 'first' | 'tail' | 'head' | 'twin' | 'weight' | 'leg'> {
  const count = 2 * edges;
  const first = new Int32Array(nodes + 1);
  for (let e = 0; e < edges; e++) {
    first[from[e]! + 1]!++;
    first[to[e]! + 1]!++;
  }
  for (let n = 0; n < nodes; n++) first[n + 1]! += first[n]!;
  const next = first.slice(0, nodes);
  const tail = new Int32Array(count);
  const head = new Int32Array(count);
  const twin = new Int32Array(count);
  const weight = new Float64Array(count);
  const leg = new Int32Array(count);
  for (let e = 0; e < edges; e++) {
    const a = next[from[e]!]!++;
    const b = next[to[e]!]!++;
    tail[a] = head[b] = from[e]!;
    head[a] = tail[b] = to[e]!;
    twin[a] = b;
    twin[b] = a;
    weight[a] = weight[b] = length[e]!;
    leg[a] = leg[b] = on[e]!;
  }
  return { first, tail, head, twin, weight, leg };
}
