import type { Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import { feederLays } from '../../steel/feeder-lays.ts';
import { supportsOf } from '../../steel/kept-supports.ts';
import type { LaidConduit } from '../../steel/lays.ts';
import type { HungSupport } from '../../steel/raceway-supports.ts';
import { CONDUIT_GAP, outsideOf, ROD_GAP, roomFor, tiersOf, widthFor } from '../../steel/trapeze.ts';
import { feederConduits } from '../../supply/feeders/feeder-conduit.ts';
import { tablesOf } from '../../tables/editions.ts';
import { passingWords } from './conduits-at.ts';
import { boxOfFeet, type Callout, type Detail, type DetailCircle, edges, segment } from './detail.ts';

/** Height of channel, feet: 1-5/8 in, the usual. Common practice, no source. */
const CHANNEL = 1.625 / 12;

/** The fullest trapeze of the site, and the usual hanger of a conduit by itself; as far as there are such. */
export function supportDetails(site: Site, plan: Plan): readonly Detail[] {
  const tables = tablesOf(site.rules);
  const feeders = feederLays(site, feederConduits(site, tables), tables);
  const all = supportsOf(site, plan.branches, feeders, tables).flatMap(({ raceway, supports }) =>
    supports.map((support) => ({ raceway: raceway.id, support })),
  );
  const fullest = all
    .filter(({ support }) => support.conduits.length > 1)
    .sort((a, b) => b.support.conduits.length - a.support.conduits.length || a.support.rod - b.support.rod)[0];
  const single = all.find(({ support }) => support.conduits.length === 1);
  return [
    ...(fullest === undefined ? [] : [trapezeDetail(fullest.raceway, fullest.support)]),
    ...(single === undefined ? [] : [hangerDetail(single.raceway, single.support)]),
  ];
}

function trapezeDetail(raceway: string, { at, conduits, member, rod }: HungSupport): Detail {
  const tiers = tiersOf(conduits);
  const tier = tiers[0]!;
  const width = widthFor(tier) / 12;
  const z = at[2];
  const largest = Math.max(...tier.map(outsideOf)) / 12;
  const shelf = z - largest / 2;
  const steel = z + rod;
  const circles: DetailCircle[] = [];
  const callouts: Callout[] = [];
  let x = ROD_GAP / 12;
  const places: number[] = [];
  for (const conduit of tier) {
    const across = outsideOf(conduit) / 12;
    circles.push({ at: [x + across / 2, shelf + across / 2], radius: across / 2, ink: 'conduit' });
    places.push(x + across / 2);
    x += across + CONDUIT_GAP / 12;
  }
  const last = circles.at(-1)!;
  callouts.push(
    {
      at: [width, steel],
      text:
        member === null
          ? 'steel or stringer, by others'
          : `${member.id}: line of the steel, beam clamp 3/8 in at each rod`,
    },
    { at: [width, (steel + z) / 2], text: '3/8 in threaded rod, two' },
    { at: [last.at[0] + last.radius, last.at[1]], text: conduitWords(tier) },
    {
      at: [width, shelf - CHANNEL / 2],
      text: `channel ${Math.round(width * 12)} in from rod to rod, a strap to each conduit; ${roomFor(tier) === 0 ? 'no room for more' : `room for ${roomFor(tier)} more like the largest`}`,
    },
  );
  return {
    kind: 'trapeze',
    title: `Trapeze on ${raceway}, ${tier.length} conduits`,
    of: [raceway],
    regions: [],
    lines: [
      segment([-0.35, steel], [width + 0.35, steel], 'cut'),
      segment([0, shelf - CHANNEL - 0.08], [0, steel], 'edge'),
      segment([width, shelf - CHANNEL - 0.08], [width, steel], 'edge'),
      edges(boxOfFeet(-0.1, shelf - CHANNEL, width + 0.1, shelf), 'edge'),
    ],
    circles,
    dimensions: [
      {
        side: 'left',
        level: 0,
        marks: [
          { at: z, from: 0 },
          { at: steel, from: -0.35 },
        ],
      },
      {
        side: 'bottom',
        level: 0,
        marks: [0, ...places, width].map((place) => ({ at: place, from: shelf - CHANNEL - 0.08 })),
      },
      { side: 'bottom', level: 1, marks: [0, width].map((place) => ({ at: place, from: shelf - CHANNEL - 0.08 })) },
    ],
    callouts,
    notes: [
      ...(tiers.length > 1
        ? [`${conduits.length} conduits hang here on ${tiers.length} trapezes; the first is drawn.`]
        : []),
      'Rod, clamps, channel and the steel for the load that hangs there, full trapezes with it: checked by the structural engineer. Bracing against earthquake and wind by others.',
    ],
  };
}

function hangerDetail(raceway: string, { at, conduits, member, rod }: HungSupport): Detail {
  const conduit = conduits[0]!;
  const radius = outsideOf(conduit) / 24;
  const [z, steel] = [at[2], at[2] + rod];
  return {
    kind: 'trapeze',
    title: `Hanger of one conduit on ${raceway}`,
    of: [raceway],
    regions: [],
    lines: [
      segment([-0.4, steel], [0.4, steel], 'cut'),
      segment([0, z + radius], [0, steel], 'edge'),
      segment([-radius - 0.06, z], [radius + 0.06, z], 'axis'),
    ],
    circles: [
      { at: [0, z], radius, ink: 'conduit' },
      { at: [0, z], radius: radius + 0.03, ink: 'thin' },
    ],
    dimensions: [
      {
        side: 'left',
        level: 0,
        marks: [
          { at: z, from: -radius - 0.06 },
          { at: steel, from: -0.4 },
        ],
      },
    ],
    callouts: [
      { at: [0.2, steel], text: member === null ? 'steel or stringer, by others' : `${member.id}: line of the steel` },
      { at: [0, (z + steel) / 2], text: 'rod or wire hanger by the trade; clamp to the steel' },
      { at: [radius, z], text: conduitWords(conduits) },
    ],
    notes: ['Hanger, clamp and the steel for the load that hangs there: checked by the structural engineer.'],
  };
}

const conduitWords = (conduits: readonly LaidConduit[]): string =>
  passingWords(conduits.map((one) => ({ ...one, across: outsideOf(one) / 12, existing: false })));
