import { kept } from '../../../routing/kept/kept.ts';
import type { Location } from '../../../routing/site/schema/vocabulary.ts';
import type { Pullpoint } from '../../../routing/site/site.ts';
import type { Handhole, PlannedBox } from '../../plan-file/branches.ts';
import { byWords, type TakeoffKind, takeoffKind } from '../../prices/kind.ts';
import type { Sections } from '../../tables/sections.ts';
import { aloftAt, type WorkHeight } from '../high.ts';
import { type Tally, tallying } from '../tally.ts';

const WHERE = {
  drop: { item: 'junction box', where: 'at the drop, ', basis: 'one at each drop' },
  junction: {
    item: 'junction box',
    where: 'on the raceway, ',
    basis: 'one where circuits of a conduit part or the method changes, away from boxes and pull points',
  },
  pullpoint: { item: 'pull point', where: '', basis: 'as drawn' },
} as const;

/** What a box is listed for, as its row and its basis have it. */
const LISTED: Readonly<Record<Location, { readonly spec: string; readonly basis: string }>> = {
  wet: { spec: ', wet location', basis: ', listed for wet places' },
  damp: { spec: ', damp location', basis: ', made so that no water comes in' },
  dry: { spec: '', basis: '' },
};

/** One for each location. */
const inEach = <Of>(of: (location: Location) => Of): Readonly<Record<Location, Of>> => ({
  wet: of('wet'),
  damp: of('damp'),
  dry: of('dry'),
});

/** Kinds whose size the code asks for, by an edition's sections. */
const sizedBy = kept(({ boxVolume, pullBox, boxAccess, handholeSize, wetBoxes }: Sections) => ({
  boxKind: inEach((location) =>
    byWords((place, size): TakeoffKind => {
      const { item, where, basis } = WHERE[place as PlannedBox['kind']];
      const rule = size.endsWith('long') ? pullBox : boxVolume;
      const listed = location === 'dry' ? '' : `${LISTED[location].basis} (${wetBoxes})`;
      return takeoffKind({
        item,
        spec: `${where}${size}${LISTED[location].spec}`,
        unit: 'each',
        basis: `${basis}; size by ${rule}${listed}`,
      });
    }),
  ),
  handholeKind: byWords((size, rating) =>
    takeoffKind({
      item: 'handhole',
      spec: `${size}, ${rating}`,
      unit: 'each',
      basis: `where circuits of a conduit part in the ground, and at pull points drawn in it: cover at grade (${boxAccess}); size by ${handholeSize}, rated for what comes over it`,
    }),
  ),
}));

/** The box in words: a standard one, or what it must at least have. Upwards to the cubic inch and the inch. */
function sizeInWords({ box, volume, length }: PlannedBox): string {
  if (length !== null) return `pull box ${Math.ceil(length - 1e-9)} in long`;
  return box ?? `box of ${Math.ceil((volume ?? 0) - 1e-9)} cu in`;
}

const bodyKind = byWords((raceway, listed) =>
  takeoffKind({
    item: 'conduit body',
    spec: `${raceway}${listed}`,
    unit: 'each',
    basis: 'at each pull point that one conduit goes in and out of; larger ones are pull boxes',
  }),
);
const coverKind = byWords((size, listed) =>
  takeoffKind({
    item: 'cover',
    spec: `${size}${listed}`,
    unit: 'each',
    basis: 'one for each box',
  }),
);

/** Raceway of the conduit body that does for a pull point: one conduit in, one alike out, conductors to 6 AWG. */
function conduitBody({ kind, raceways, length }: PlannedBox): string | null {
  const [into, outOf, ...others] = raceways;
  const alike = into !== undefined && into === outOf && others.length === 0;
  return kind === 'pullpoint' && length === null && alike && into !== 'tray' ? into : null;
}

/** Boxes in the ground, each with its cover. */
export function handholeQuantities(handholes: readonly Handhole[], sections: Sections): Tally {
  const { handholeKind } = sizedBy(sections);
  const { add, tally } = tallying();
  for (const { id, size, rating } of handholes) add(handholeKind(size, rating), id, 1);
  return tally;
}

/**
 * Boxes above grade by place and size, with their covers; conduit bodies where one does. The box of a pedestal comes with
 * it: `pedestals` are the drops that are one.
 */
export function boxQuantities(
  boxes: readonly PlannedBox[],
  pedestals: ReadonlySet<string>,
  sections: Sections,
  heights: WorkHeight,
): Tally {
  const { boxKind } = sizedBy(sections);
  const { add, tally } = tallying();
  for (const box of boxes) {
    if (box.under !== null || (box.kind === 'drop' && pedestals.has(box.id))) continue;
    const aloft = aloftAt(box.at[2], heights);
    const listed = LISTED[box.location].spec;
    const body = conduitBody(box);
    if (body !== null) {
      add(bodyKind(body, listed), box.id, 1, aloft);
      continue;
    }
    const size = sizeInWords(box);
    add(boxKind[box.location](box.kind, size), box.id, 1, aloft);
    add(PIGTAIL, box.id, 1, aloft);
    add(coverKind(size, listed), box.id, 1, aloft);
  }
  return tally;
}

const PIGTAIL = takeoffKind({
  item: 'bonding pigtail',
  spec: 'with screw',
  unit: 'each',
  basis: 'one in each box above grade, from its grounding conductors to the metal of it; common practice',
});

/** Box of a drop without a circuit. */
export const IDLE_DROP = takeoffKind({
  item: 'junction box',
  spec: 'at the drop, no circuit yet',
  unit: 'each',
  basis: 'one at each drop',
});
const IDLE_PULL = takeoffKind({ item: 'pull point', spec: 'no circuit passes', unit: 'each', basis: 'as drawn' });

/** Boxes of drops that no circuit comes to, so that no size is known. */
export function idleDropQuantities(drops: readonly string[], pedestals: ReadonlySet<string>): Tally {
  const { add, tally } = tallying();
  for (const id of drops) if (!pedestals.has(id)) add(IDLE_DROP, id, 1);
  return tally;
}

/** Pull points that no circuit passes, of those that have no box. */
export function idlePullpointQuantities(
  pullpoints: readonly Pullpoint[],
  boxes: readonly PlannedBox[],
  heights: WorkHeight,
): Tally {
  const { add, tally } = tallying();
  const passed = new Set(boxes.map(({ id }) => id));
  for (const { id, at } of pullpoints) if (!passed.has(id)) add(IDLE_PULL, id, 1, aloftAt(at[2], heights));
  return tally;
}
