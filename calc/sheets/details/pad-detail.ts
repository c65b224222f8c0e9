import { addTo } from '../../../routing/lists/grouping.ts';
import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import { workingSpaceSize } from '../../../routing/site/place/working-space.ts';
import { EQUIPMENT_WORDS, type EquipmentKind } from '../../../routing/site/schema/vocabulary.ts';
import type { Equipment, Site } from '../../../routing/site/site.ts';
import { workingNeeds } from '../../supply/panels/working-needs.ts';
import { tablesOf } from '../../tables/editions.ts';
import { boxOfFeet, type Detail, type DetailLine, edges, segment, typicalOf } from './detail.ts';

/** What stands on the ground by itself; the others hang on a wall, a column or a frame. */
const STANDS: ReadonlySet<EquipmentKind> = new Set(['service', 'switchboard', 'transformer', 'inverter']);
/** Between plan and side view, feet. */
const APART = 2.5;
/** The pad as it is shown: past the equipment, and thick; by others. */
const PAST = 0.5;
const THICK = 0.5;
const MOST = 3;

/** Equipment with its working space, in plan and from the side: one for each kind and size, what stands on pads first. */
export function padDetails(site: Site): readonly Detail[] {
  const groups = new Map<string, Equipment[]>();
  for (const one of site.equipment) {
    if (workingSpaceSize(one, NO_SPACE) === null) continue;
    const key = [one.kind, ...one.size, one.workingSpace ?? -1].join(' ');
    addTo(groups, key, one);
  }
  return [...groups.values()]
    .sort((a, b) => Number(STANDS.has(b[0]!.kind)) - Number(STANDS.has(a[0]!.kind)))
    .slice(0, MOST)
    .map((all) => padDetail(all, site));
}

const NO_SPACE = { width: 0, depth: 0, height: 0 };

function padDetail(all: readonly Equipment[], site: Site): Detail {
  const one = all[0]!;
  const tables = tablesOf(site.rules);
  const needs = workingNeeds(site, tables);
  const [wide, deep, high] = one.size;
  const space = workingSpaceSize(one, needs.least)!;
  const source = needs.by.get(one.id)?.source ?? tables.workingSpace.source;
  const length = (feet: number): string => printLength(feet, site.units);
  const stands = STANDS.has(one.kind);
  const past = stands ? PAST : 0;
  // In plan: the front down, its space before it. From the side: the front to the left.
  const plan = { half: Math.max(wide, space.width) / 2, back: deep };
  const face = plan.half + APART + space.depth;
  const lines: DetailLine[] = [
    edges(boxOfFeet(-wide / 2, 0, wide / 2, deep), 'cut'),
    edges(boxOfFeet(-space.width / 2, -space.depth, space.width / 2, 0), 'hidden'),
    segment([-space.width / 2, -space.depth], [space.width / 2, 0], 'thin'),
    segment([-space.width / 2, 0], [space.width / 2, -space.depth], 'thin'),
    edges(boxOfFeet(face, 0, face + deep, high), 'cut'),
    edges(boxOfFeet(face - space.depth, 0, face, space.height), 'hidden'),
    segment([face - space.depth - 0.4, 0], [face + deep + past + 0.4, 0], 'cut'),
  ];
  const ground = boxOfFeet(face - space.depth - 0.4, -THICK - 0.4, face + deep + past + 0.4, 0);
  const pad = boxOfFeet(face - PAST, -THICK, face + deep + PAST, 0);
  if (stands) {
    lines.push(edges(pad, 'edge'), edges(boxOfFeet(-wide / 2 - PAST, -PAST, wide / 2 + PAST, deep + PAST), 'hidden'));
  }
  return {
    kind: 'pad',
    title: `${stands ? 'Equipment pad' : 'Equipment'} and working space, ${typicalOf(all.map(({ id }) => id))}`,
    of: all.map(({ id }) => id),
    regions: [{ box: ground, hatch: 'earth' }, ...(stands ? [{ box: pad, hatch: 'concrete' as const }] : [])],
    lines,
    circles: [],
    dimensions: [
      {
        side: 'left',
        level: 0,
        marks: [
          { at: -space.depth, from: -space.width / 2 },
          { at: 0, from: -space.width / 2 },
          { at: deep, from: -wide / 2 },
        ],
      },
      {
        side: 'bottom',
        level: 0,
        edge: -space.depth,
        marks: [-space.width / 2, space.width / 2].map((at) => ({ at, from: -space.depth })),
      },
      {
        side: 'bottom',
        level: 0,
        edge: ground.minY,
        marks: [face - space.depth, face, face + deep].map((at) => ({ at, from: ground.minY })),
      },
      {
        side: 'top',
        level: 0,
        edge: deep + past,
        marks: [-wide / 2, wide / 2].map((at) => ({ at, from: deep + past })),
      },
    ],
    callouts: [
      { at: [face + deep, high * 0.8], text: `${one.id}: ${EQUIPMENT_WORDS[one.kind]}, ${length(high)} high` },
      { at: [face, space.height], text: `working space, ${length(space.height)} high; by ${source}` },
      ...(stands
        ? [{ at: [pad.maxX, -THICK / 2] as const, text: 'concrete pad: size, thickness and anchors by others' }]
        : []),
    ],
    notes: [
      'Plan to the left, from the side to the right. The working space is kept clear, of parked cars too, and is not for storage; the doors open as the code asks.',
      stands
        ? 'Pad, anchorage, frost and soil: by the structural and civil engineers. Clearances of transformers from walls and doors by the utility and the fire code: checked by others.'
        : 'What it is mounted on and its anchors: by others.',
    ],
  };
}
