import { bollardsNear, guarded } from '../../../routing/checks/access/guard-findings.ts';
import { addTo } from '../../../routing/lists/grouping.ts';
import { apart } from '../../../routing/plane/distance.ts';
import { inPlan } from '../../../routing/plane/space.ts';
import type { Column, Drop, Site } from '../../../routing/site/site.ts';
import {
  boxOfFeet,
  type Callout,
  type Detail,
  type DetailLine,
  edges,
  fromBase,
  grade,
  segment,
  typicalOf,
} from './detail.ts';

/** The footing as it is taken off, 18 in across and 36 in deep; what it needs to be is for others. */
const FOOTING = 0.75;
const DEEP = 3;
/** Half of a pedestal as it is shown, feet. */
const HALF = 0.35;

/** The usual bollard, beside the pedestal that it guards where there is one; none where no low column is drawn. */
export function bollardDetails(site: Site): readonly Detail[] {
  const { pedestals, bollards } = guarded(site);
  const groups = new Map<string, Column[]>();
  for (const one of bollards) {
    const key = [one.height ?? 0, ...one.size].map((feet) => Math.round(feet * 192)).join(' ');
    addTo(groups, key, one);
  }
  const [usual] = [...groups.values()].sort((a, b) => b.length - a.length);
  if (usual === undefined) return [];
  const pair = pedestals.flatMap((pedestal) =>
    bollardsNear(pedestal, usual).map((bollard) => ({
      pedestal,
      bollard,
      far: apart(inPlan(pedestal.box), bollard.at),
    })),
  );
  const nearest = pair.reduce<(typeof pair)[number] | null>(
    (best, one) => (best === null || one.far < best.far ? one : best),
    null,
  );
  const first = nearest?.bollard ?? usual[0]!;
  return [bollardDetail([first, ...usual.filter((one) => one !== first)], nearest?.pedestal ?? null)];
}

function bollardDetail(bollards: readonly Column[], pedestal: Drop | null): Detail {
  const one = bollards[0]!;
  const half = Math.max(...one.size) / 2;
  const high = one.height ?? 0;
  const away = pedestal === null ? 0 : apart(inPlan(pedestal.box), one.at);
  const right = pedestal === null ? half + 1.2 : away + HALF + 0.8;
  const ground = grade(-FOOTING - 0.6, right, DEEP + 0.3);
  const lines: DetailLine[] = [
    edges(boxOfFeet(-half, 0, half, high), 'edge'),
    edges(boxOfFeet(-FOOTING, -DEEP, FOOTING, 0), 'hidden'),
    segment([0, -0.4], [0, high], 'axis'),
  ];
  const callouts: Callout[] = [
    { at: [half, high * 0.8], text: `bollard ${one.id}, filled and capped, in a color that is seen` },
    { at: [FOOTING, -DEEP / 2], text: 'footing, taken off as 18 in across and 36 in deep: size by others' },
  ];
  if (pedestal !== null) {
    lines.push(
      edges(boxOfFeet(away - HALF, 0, away + HALF, pedestal.box[2]), 'edge'),
      segment([away, -0.3], [away, pedestal.box[2] + 0.2], 'axis'),
    );
    callouts.push({
      at: [away + HALF, pedestal.box[2] * 0.7],
      text: `pedestal ${pedestal.id}, width by its submittal`,
    });
  }
  return {
    kind: 'bollard',
    title: `Bollard, ${typicalOf(bollards.map(({ id }) => id))}`,
    of: bollards.map(({ id }) => id),
    regions: [...ground.regions, { box: boxOfFeet(-FOOTING, -DEEP, FOOTING, 0), hatch: 'concrete' }],
    lines: [...ground.lines, ...lines],
    circles: [],
    dimensions: [
      ...fromBase('left', { at: 0, from: -FOOTING - 0.6 }, [{ at: high, from: -half }]),
      { side: 'top', level: 0, edge: high, marks: [-half, half].map((at) => ({ at, from: high })) },
      ...(pedestal === null ? [] : fromBase('bottom', { at: 0, from: -DEEP - 0.3 }, [{ at: away, from: -0.3 }])),
    ],
    callouts,
    notes: [
      'Footing for the blow of a vehicle: by the structural engineer. 3 ft clear is kept between bollards where a person passes to the connector, and none stands in an access aisle. Utilities under the footing are found by others.',
    ],
  };
}
