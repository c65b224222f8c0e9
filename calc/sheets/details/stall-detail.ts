import { addTo } from '../../../routing/lists/grouping.ts';
import type { Site, Stall } from '../../../routing/site/site.ts';
import { stallsServedBy } from '../../takeoff/quantities/stall-quantities.ts';
import { boxOfFeet, type Callout, type Detail, type DetailLine, edges, segment, typicalOf } from './detail.ts';

/** Symbols of what has no size in the file, feet: stencil, wheel stop, sign and post. */
const STENCIL = 2;
const STOP = { half: 2.5, from: 2.5, deep: 0.5 };
const SIGN = { half: 0.5, low: 5, high: 6.5 };
const POST = 0.1;
/** Between plan and elevation. */
const APART = 3;

/** How the usual stall that a charger serves is marked and signed, as it is taken off; none where none is served. */
export function stallDetails({ stalls, chargers, drops }: Site): readonly Detail[] {
  const pedestals = new Set(drops.flatMap(({ id, mount }) => (mount === 'pedestal' ? [id] : [])));
  const { all, fromPedestals } = stallsServedBy(chargers, pedestals);
  const groups = new Map<string, Stall[]>();
  for (const stall of stalls) {
    if (!all.has(stall.id)) continue;
    const key = [stall.width, stall.depth, fromPedestals.has(stall.id)].join(' ');
    addTo(groups, key, stall);
  }
  const [usual] = [...groups.values()].sort((a, b) => b.length - a.length);
  return usual === undefined ? [] : [stallDetail(usual, fromPedestals.has(usual[0]!.id))];
}

function stallDetail(stalls: readonly Stall[], hasStop: boolean): Detail {
  const { width, depth } = stalls[0]!;
  const half = width / 2;
  // In plan: driven into from below. Beside it the sign, seen from the stall.
  const sign = half + APART;
  const lines: DetailLine[] = [
    segment([-half, 0], [-half, depth], 'cut'),
    segment([half, 0], [half, depth], 'cut'),
    segment([-half, depth], [half, depth], 'thin'),
    edges(boxOfFeet(-STENCIL, depth / 2 - STENCIL / 2, STENCIL, depth / 2 + STENCIL / 2), 'hidden'),
    segment([sign - 1.5, 0], [sign + 1.5, 0], 'cut'),
    edges(boxOfFeet(sign - POST, 0, sign + POST, SIGN.low), 'edge'),
    edges(boxOfFeet(sign - SIGN.half, SIGN.low, sign + SIGN.half, SIGN.high), 'edge'),
  ];
  const callouts: Callout[] = [
    {
      at: [sign + SIGN.half, (SIGN.low + SIGN.high) / 2],
      text: 'sign, charging only, on its post at the head of the stall: words, size and height by the AHJ',
    },
    { at: [STENCIL, depth / 2], text: 'stencil: words, symbol and color by the owner and the AHJ' },
    { at: [half, depth * 0.75], text: 'line of the stall' },
  ];
  if (hasStop) {
    lines.push(edges(boxOfFeet(-STOP.half, depth - STOP.from, STOP.half, depth - STOP.from + STOP.deep), 'edge'));
    callouts.push({ at: [STOP.half, depth - STOP.from + STOP.deep / 2], text: 'wheel stop, pinned' });
  }
  return {
    kind: 'stall',
    title: `Marking and sign of a stall, ${typicalOf(stalls.map(({ id, label = id }) => label))}`,
    of: stalls.map(({ id }) => id),
    regions: [],
    lines,
    circles: [{ at: [0, depth + 0.6], radius: 2 * POST, ink: 'edge' }],
    dimensions: [
      { side: 'left', level: 0, marks: [0, depth].map((at) => ({ at, from: -half })) },
      { side: 'bottom', level: 0, marks: [-half, half].map((at) => ({ at, from: 0 })) },
    ],
    callouts,
    notes: [
      'Plan to the left, the sign from the stall to the right; what has no dimension is a symbol. Accessible stalls have their own signs, marking and access aisles beside these: checked by the architect against the adopted standard.',
    ],
  };
}
