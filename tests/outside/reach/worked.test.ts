import { describe, expect, test } from 'vitest';
import { catenary, riseAt } from '../../../routing/reach/cords/catenary.ts';
import { hang } from '../../../routing/reach/cords/hang.ts';
import { neededLength } from '../../../routing/reach/cords/needed-length.ts';
import { reachRegion } from '../../../routing/reach/region.ts';
import { DIRECTIONS } from '../../../routing/site/schema/vocabulary.ts';
import type { Point2 } from '../../../routing/site/site.ts';
import { inletAt } from '../../../routing/standing/parked.ts';
import { CAR, drop, inlet, siteOf, stall } from '../../routing/reach/sites.ts';
import worked from './worked.json';

/** Every input that some row of the file has; a row has its own. */
type Inputs = Readonly<
  Record<
    | 'radius_ft'
    | 'dist_P_ft'
    | 'dist_Q_ft'
    | 'span_ft'
    | 'sag_ft'
    | 'weight_lb_per_ft'
    | 'horizontal_tension_lb'
    | 'horizontal_ft'
    | 'drop_ft'
    | 'cord_out_ft'
    | 'retractor_height_ft'
    | 'raceway_ft'
    | 'inlet_ft'
    | 'cord_ft'
    | 'allowance_ft'
    | 'veh_l_ft'
    | 'veh_w_ft'
    | 'gap_ft'
    | 'fx'
    | 'c_ft'
    | 'length_m'
    | 'sag_m'
    | 'span_m'
    | 'tension_kg'
    | 'w_kg_per_m',
    number
  > & {
    P: Point2;
    Q: Point2;
    rect_xmin_ymin_xmax_ymax: readonly [number, number, number, number];
    heights_m: readonly [number, number];
  }
>;

/** What the engine makes of each row of the file, by its id, and quantity where a row has several. */
const ANSWERS: Record<string, (inputs: Inputs) => number> = {
  'TS-01': round,
  'TS-02': round,
  'TS-04': round,
  // The round post as a polygon of 720 sides.
  'TS-06': ({ radius_ft: r, dist_P_ft: p, dist_Q_ft: q }) => {
    const post = Array.from({ length: 720 }, (_, i): Point2 => {
      const angle = (i * Math.PI) / 360;
      return [r * Math.cos(angle), r * Math.sin(angle)];
    });
    return neededLength({ retractor: [-p, 0, 0], inlet: [q, 0, 0], around: [post] }).planLength!;
  },
  // The half length whose sag is the printed one.
  'CA-01': ({ span_ft: span, sag_ft: sag }) => {
    return bisect((s) => sagOf(2 * s, span) - sag, span / 2 + 1e-6, span);
  },
  'CA-04': ({ span_ft: span, weight_lb_per_ft: w, horizontal_tension_lb: h }) => sagOf(lengthOf(h / w, span), span),
  'CA-06': ({ span_ft: span, weight_lb_per_ft: w, horizontal_tension_lb: h }) => sagOf(lengthOf(h / w, span), span),
  'CA-10': ({ horizontal_ft: h, drop_ft: v, cord_out_ft: s, retractor_height_ft: z }) =>
    hang(
      [
        [0, 0],
        [h, 0],
      ],
      z,
      z - v,
      s,
      6.67,
    )!.low,
  'RE-01': ({ raceway_ft: z, inlet_ft: to, horizontal_ft: d }) =>
    neededLength({ retractor: [0, 0, z], inlet: [d, 0, to], around: [] }).needed!,
  'RE-02': ({ cord_ft: cord, allowance_ft: cordSlack, raceway_ft: z, inlet_ft: to }) => {
    const site = siteOf({ drops: [drop('D1', [0, 0, z], { cord })], rules: { cordSlack } });
    return Math.max(...reachRegion(site, 'D1', to)[0]!.map(([x, y]) => Math.hypot(x, y)));
  },
  'RE-04': ({ veh_l_ft: length, veh_w_ft: width, gap_ft: gap, fx }) => {
    const [x, y] = inletAt(stall('S1', [0, 0]), { ...CAR, length, width }, gap, 'nose-in', inlet('i', 'left', fx));
    return Math.hypot(x, 18 - y);
  },
  'sg-15 length_ft': ({ c_ft: c, span_ft: span }) => lengthOf(c, span),
  'sg-15 sag_ft': ({ c_ft: c, span_ft: span }) => sagOf(lengthOf(c, span), span),
  'sg-22 span_m': ({ length_m: length, sag_m: sag }) =>
    bisect((span) => sag - sagOf(length, span), length / 2, length - 1),
  'sg-08 mid_clearance_m': ({ span_m: span, tension_kg: t, w_kg_per_m: w, heights_m: [low, high] }) => {
    const fall = high - low;
    const curve = catenary(Math.hypot(fall, lengthOf(t / w, span)), span, fall)!;
    return high - riseAt(curve, 0) + riseAt(curve, span / 2);
  },
  'sg-26 sag_m': ({ w_kg_per_m: w, tension_kg: t, span_m: span }) => sagOf(lengthOf(t / w, span), span),
  'sg-20 length_m': ({ span_m: span, sag_m: sag }) => bisect((s) => sagOf(s, span) - sag, span + 1e-6, span + 1),
};

function round({ P: p, Q: q, rect_xmin_ymin_xmax_ymax: [x0, y0, x1, y1] }: Inputs): number {
  const around: Point2[] = [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
  return neededLength({ retractor: [p[0], p[1], 0], inlet: [q[0], q[1], 0], around: [around] }).planLength!;
}

// The formula of the sources: length of a level catenary of parameter a.
function lengthOf(a: number, span: number): number {
  return 2 * a * Math.sinh(span / (2 * a));
}

function sagOf(length: number, span: number): number {
  const curve = catenary(length, span, 0)!;
  expect(curve.bottom).toBeCloseTo(span / 2, 9);
  return riseAt(curve, 0);
}

/** Where a function that grows crosses zero. */
function bisect(f: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  for (let i = 0; i < 80; i++) {
    const middle = (a + b) / 2;
    if (f(middle) < 0) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}

describe('worked examples', () => {
  for (const row of worked.worked) {
    const name = 'quantity' in row ? `${row.id} ${row.quantity}` : row.id;
    test(`${name}: ${row.answer} ${row.unit}, ${row.source}`, () => {
      const answer = ANSWERS[name]!(row.inputs as unknown as Inputs);
      expect(Math.abs(answer - row.answer)).toBeLessThanOrEqual(row.tolerance);
    });
  }
});

// Side inlets at the middle of their usual ranges, 0.10 to 0.28 and 0.76 to 0.95 of the length (common practice, no
// source). The figures take the front inlet at 0.01 of the length; here it is at the bumper, up to 0.19 ft farther.
describe(`${worked.stall.what}: ${worked.stall.source}`, () => {
  const north = stall('S1', [0, 0]);
  const DROPS: Record<keyof typeof worked.stall.feet, Point2> = {
    head_end_centre: [0, 18],
    quarter_depth_centre: [0, 13.5],
    mid_depth_centre: [0, 9],
    mid_depth_on_stripe: [4.5, 9],
    head_end_on_stripe: [4.5, 18],
    aisle_end_centre: [0, 0],
  };
  const inlets = [
    inlet('front', 'front', 0),
    inlet('front-left', 'left', 0.19),
    inlet('front-right', 'right', 0.19),
    inlet('rear-left', 'left', 0.855),
    inlet('rear-right', 'right', 0.855),
  ];

  test.each(Object.entries(DROPS))('%s', (name, [x, y]) => {
    let worst = 0;
    for (const length of [14, 19])
      for (const gap of [0.5, 2])
        for (const direction of DIRECTIONS)
          for (const one of inlets)
            for (const error of [-1, 1]) {
              const at = inletAt(north, { ...CAR, length, width: 6.5 }, gap, direction, one);
              const { needed } = neededLength({
                retractor: [x, y, 11],
                inlet: [at[0] + error, at[1], at[2]],
                around: [],
              });
              worst = Math.max(worst, needed!);
            }
    const printed = worked.stall.feet[name as keyof typeof worked.stall.feet];
    expect(worst).toBeGreaterThan(printed - worked.stall.tolerance);
    expect(worst).toBeLessThan(printed + worked.stall.tolerance + 0.19);
  });
});
