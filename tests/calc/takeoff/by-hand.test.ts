import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { costOf } from '../../../calc/takeoff/bid/cost.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { OVERHEAD, PEDESTALS } from './hand-lots.ts';

/** A count made by hand, and why it is that many. */
type Count = readonly [item: string, spec: string, quantity: number, because: string];

const W = 1.05;

/** Each conduit: C1 and C2 go together up 6 ft and 20 ft along to J1, then 1 ft down to D1, and 20 ft on and 1 down to D2. */
const OVERHEAD_COUNTS: readonly Count[] = [
  ['panelboard', '100 A bus, 100 A main, 208 V, three-phase, 12 spaces', 1, 'P1 as drawn; its main comes with it'],
  ['breaker', '2-pole 40 A', 2, '125% of 32 A is 40 A, for C1 and C2'],
  ['conductor', '8 AWG copper THWN-2, black', 33 * W, 'C1 on A and B: 6 + 20 + 1 of run, 5 at the panel, 1 at the box'],
  ['conductor', '8 AWG copper THWN-2, blue', 53 * W, 'C2 on B and C: 6 + 40 + 1 and 6'],
  ['conductor', '8 AWG copper THWN-2, red', (33 + 53) * W, 'B of both'],
  ['grounding conductor', '10 AWG copper THWN-2, green', 58 * W, '26 + 5 + 1 to J1, 1 + 2 to D1, 21 + 2 to D2: 58'],
  ['pilot conductor', '14 AWG copper THWN-2, violet', 33 * W, 'C1 alone has a pilot, beside its lines'],
  ['reel', '8 AWG copper THWN-2, black', 1, '34.65 ft from a coil of 100'],
  ['reel', '8 AWG copper THWN-2, blue', 1, '55.65 ft from a coil of 100'],
  ['reel', '8 AWG copper THWN-2, red', 1, '90.3 ft from a coil of 100'],
  ['reel', '10 AWG copper THWN-2, green', 1, '60.9 ft from a coil of 100'],
  ['reel', '14 AWG copper THWN-2, violet', 1, '34.65 ft from a coil of 100'],
  ['raceway', 'EMT 1/2 in', 22 * W, '1 ft to D1, 21 ft to D2'],
  ['raceway', 'EMT 3/4 in', 26 * W, 'to J1 with four lines, a pilot and a ground'],
  ['raceway stick', 'EMT 1/2 in, 10 ft', 3, '21 ft bent are 10 + 10 + 1, and 1 more out of the third stick'],
  ['raceway stick', 'EMT 3/4 in, 10 ft', 3, '26 ft bent are 10 + 10 + 6'],
  ['field bend', 'EMT 1/2 in', 1, 'down to D2; at D1 the conduit leaves a box'],
  ['field bend', 'EMT 3/4 in', 1, 'from the riser to the trunk'],
  ['coupling', 'EMT 1/2 in', 2, 'three pieces in 21 ft'],
  ['coupling', 'EMT 3/4 in', 2, 'three pieces in 26 ft'],
  ['connector', 'EMT 1/2 in', 4, 'both ends of two conduits'],
  ['connector', 'EMT 3/4 in', 2, 'both ends of one'],
  ['strap', 'EMT 1/2 in', 3, 'on the trapeze and two hangers of the 20 ft; 1 ft down needs none'],
  ['strap', 'EMT 3/4 in', 4, 'one on the riser of 6 ft, three along the 20 ft'],
  ['hanger', 'EMT 1/2 in', 2, '10 ft after the trapeze at 20, and 10 more, 1 ft from the drop to the box'],
  ['hanger', 'EMT 3/4 in', 2, '5 ft from the corner, half a spacing, and 10 ft on'],
  ['trapeze', '12 in', 1, 'at J1 both conduits are held'],
  ['threaded rod', '3/8 in', 4 * W, 'two, from the beam at 12 ft to the trunk at 10'],
  ['beam clamp', '3/8 in', 2, 'one for each rod'],
  ['junction box', 'at the drop, 4 x 1-1/4 square, wet location', 1, 'D2: 4 x #8 and grounds, 1/2 in. knockout'],
  ['junction box', 'at the drop, 4 x 1-1/2 square, wet location', 1, 'D1: the pilot in and out besides'],
  ['junction box', 'on the raceway, 4 x 1-1/2 square, wet location', 1, 'J1, where they part: 3/4 in. knockout'],
  ['cover', '4 x 1-1/4 square, wet location', 1, 'D2'],
  ['cover', '4 x 1-1/2 square, wet location', 2, 'D1 and J1'],
  ['bonding pigtail', 'with screw', 3, 'one in each box'],
  ['wire connector', 'to 8 AWG copper', 7, 'two lines and a ground at both drops, and the pilot at one'],
  ['striping', 'lines and stencil of a stall', 2, 'S1 and S2'],
  ['sign', 'charging only, on its post', 2, 'S1 and S2'],
  ['charging module', '32 A 208 V single-phase', 2, 'C1 and C2'],
  ['retractor', 'cord', 2, 'D1 and D2'],
  ['cord', '25\' 0" usable, 32 A', 2, 'C1 and C2'],
  ['strain relief', 'cord of 32 A', 2, 'where each cord leaves its box'],
  ['label', 'circuit', 4, 'at breaker and box of both'],
  ['test', 'branch circuit, insulation resistance and polarity', 2, 'C1 and C2'],
  ['test', 'charger, commissioning', 2, 'C1 and C2'],
];

/** F1: down 5 ft, 100 along, up 5. C1: down 4, 22 along, up 4 and 1 to the box; C2 the same with 42, in its own conduit. */
const PEDESTAL_COUNTS: readonly Count[] = [
  ['panelboard', '225 A bus, 150 A main, 208 V, three-phase, 24 spaces', 1, 'P1 as drawn; the source is the utility’s'],
  ['transformer', '45 kVA, 480-208 V', 1, 'T1 as drawn'],
  ['feeder conductor', '4 AWG copper XHHW-2', 3 * 120 * W, 'F1: three lines to a delta, 110 ft and 5 at both ends'],
  ['feeder conductor', '1/0 AWG copper XHHW-2', 4 * 18 * W, 'F2: three lines and a neutral, 8 ft and 10'],
  ['feeder grounding conductor', '8 AWG copper XHHW-2', 120 * W, 'F1 behind 70 A (Table 250.122)'],
  ['feeder bonding conductor', '6 AWG copper XHHW-2', 18 * W, 'F2 ahead of a device, for 1/0 (Table 250.102(C)(1))'],
  ['feeder raceway', 'EMT 1-1/2 in', 8 * W, 'F2 as its length is given'],
  ['feeder raceway', 'PVC40 1 in', 110 * W, 'F1: 5 + 100 + 5'],
  ['termination', '4 AWG copper', 6, 'both ends of three'],
  ['termination', '6 AWG copper', 2, 'both ends of the jumper of F2'],
  ['termination', '8 AWG copper', 2, 'both ends of the ground of F1'],
  ['termination', '1/0 AWG copper', 8, 'both ends of four'],
  ['lug', '4 AWG copper', 3, 'F1 ends at the transformer'],
  ['lug', '6 AWG copper', 1, 'F2 begins there'],
  ['lug', '8 AWG copper', 1, 'F1'],
  ['lug', '1/0 AWG copper', 4, 'F2'],
  ['system bonding jumper', '6 AWG copper, bare', 1, 'at T1, a derived system'],
  ['electrode conductor', '6 AWG copper, bare', 20 * W, 'the allowance from T1 to its rods'],
  ['electrode connection', 'clamp or weld', 2, 'at both rods'],
  ['ground rod', '5/8 in x 8 ft', 2, 'one alone is not proved enough'],
  ['breaker', '2-pole 40 A', 2, 'C1 and C2'],
  ['breaker', '3-pole 70 A', 1, 'F1 where it begins; the device of F2 is the main of P1'],
  ['conductor', '8 AWG copper THWN-2, black', 37 * W, 'C1 on A and B: 31 ft of run and 6'],
  ['conductor', '8 AWG copper THWN-2, blue', 57 * W, 'C2 on B and C: 51 ft and 6'],
  ['conductor', '8 AWG copper THWN-2, red', 94 * W, 'B of both'],
  ['grounding conductor', '10 AWG copper THWN-2, green', 94 * W, 'one in each conduit'],
  ['reel', '8 AWG copper THWN-2, black', 1, '38.85 ft from a coil of 100'],
  ['reel', '8 AWG copper THWN-2, blue', 1, '59.85 ft'],
  ['reel', '8 AWG copper THWN-2, red', 1, '98.7 ft'],
  ['reel', '10 AWG copper THWN-2, green', 1, '98.7 ft'],
  ['raceway', 'PVC80 1 in', 82 * W, '31 and 51 ft'],
  ['raceway stick', 'EMT 1-1/2 in, 10 ft', 1, '8 ft'],
  ['raceway stick', 'PVC40 1 in, 10 ft', 12, 'ten in 100 ft; 5 and 5 ft with a saw cut between are two'],
  [
    'raceway stick',
    'PVC80 1 in, 10 ft',
    9,
    'two in 22 and four in 42 ft; 4 + 2 + 4 + 2 + 5 + 5 ft left are three more',
  ],
  ['elbow', 'EMT 1-1/2 in, 90 degrees', 2, 'F2 is not drawn: one at each end; too large to be bent by hand'],
  ['elbow', 'PVC40 1 in, 90 degrees', 2, 'at the feet of F1'],
  ['elbow', 'PVC80 1 in, 90 degrees', 4, 'at the panel and at the pedestal, of both'],
  ['coupling', 'EMT 1-1/2 in', 4, 'two at each elbow'],
  ['coupling', 'PVC40 1 in', 2, 'one at each elbow, sticks being belled'],
  ['coupling', 'PVC80 1 in', 4, 'likewise'],
  ['connector', 'EMT 1-1/2 in', 2, 'both ends of F2'],
  ['connector', 'PVC40 1 in', 2, 'both ends of F1'],
  ['connector', 'PVC80 1 in', 4, 'both ends of two'],
  ['bushing', 'insulating, 1 in', 2, 'F1 has 4 AWG in plastic; EMT has its throat'],
  ['strap', 'EMT 1-1/2 in', 2, '3 ft from both ends of 8'],
  ['wire connector', 'to 8 AWG copper', 6, 'two lines and a ground at both'],
  ['saw cut', 'asphalt', 2 * 42, 'both edges of the trench of the pedestals'],
  ['saw cut', 'concrete', 2 * 100, 'and of the feeder'],
  ['trench', 'asphalt, 24 in deep, 12 in wide', 42, 'from the panel to the far pedestal once, for two conduits'],
  ['trench', 'concrete, 36 in deep, 12 in wide', 100, 'the feeder'],
  ['bedding', 'sand, 12 in wide', 142, 'both'],
  ['warning tape', 'buried line', 142, 'both'],
  ['backfill', '24 in deep, 12 in wide', 42, 'the pedestals'],
  ['backfill', '36 in deep, 12 in wide', 100, 'the feeder'],
  [
    'spoil',
    'cubic yard, hauled off',
    (1.25 * (42 * (8 * 12 + 4 * 24) + 100 * (8 * 12 + 6 * 24))) / 144 / 27,
    '8 in. of sand 12 wide and the paving 24 wide, a quarter more when dug',
  ],
  ['patch', 'asphalt, 24 in wide', 42, '6 in. past the trench on either side'],
  ['patch', 'concrete, 24 in wide', 100, 'likewise'],
  ['core drill', 'through paving', 6, 'two ends of three conduits come up through paving'],
  ['equipment pad', 'concrete, 16 sq ft', 1, 'T1, 3 by 3 ft and 6 in. all round'],
  ['pedestal', 'box and cord', 2, 'D1 and D2, with box, cover, cord and its relief'],
  ['pedestal base', 'concrete, with anchor bolts', 2, 'under each'],
  ['bollard', 'at a pedestal', 4, 'two at each'],
  ['bollard footing', 'concrete, 18 in across, 36 in deep', 4, 'under each'],
  ['wheel stop', 'pinned', 2, 'S1 and S2'],
  ['striping', 'lines and stencil of a stall', 2, 'S1 and S2'],
  ['sign', 'charging only, on its post', 2, 'S1 and S2'],
  ['charging module', '32 A 208 V single-phase', 2, 'C1 and C2'],
  ['label', 'circuit', 4, 'at breaker and box of both'],
  ['test', 'branch circuit, insulation resistance and polarity', 2, 'C1 and C2'],
  ['test', 'charger, commissioning', 2, 'C1 and C2'],
  ['test', 'feeder, insulation resistance', 2, 'F1 and F2'],
];

describe.each([
  ['overhead', OVERHEAD, OVERHEAD_COUNTS],
  ['of pedestals with a 480 V feeder', PEDESTALS, PEDESTAL_COUNTS],
])('a lot %s, taken off by hand', (_, file, counts) => {
  const { takeoff } = plan(toSite(file));

  test('has these rows and no other', () => {
    const names = (rows: readonly (readonly [string, string, ...unknown[]])[]): string[] =>
      rows.map(([item, spec]) => `${item}: ${spec}`).sort();
    expect(names(takeoff.map(({ item, spec }) => [item, spec]))).toEqual(names(counts));
  });

  test.each(counts)('%s, %s: %d, for %s', (item, spec, quantity) => {
    const [row] = takeoff.filter((one) => one.item === item && one.spec === spec);
    expect(row!.quantity).toBeCloseTo(quantity, 9);
  });

  test('has a price for all of it', () => {
    expect(costOf(takeoff, INVENTED_LIST, 2).missing).toEqual([]);
  });
});
