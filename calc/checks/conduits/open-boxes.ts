import { kept } from '../../../routing/kept/kept.ts';
import { nearestMember, type Steel, steelOf } from '../../../routing/network/support/steel-near.ts';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import type { Drop, Member, Point3, Raceway } from '../../../routing/site/site.ts';
import type { Design } from '../../branches/design.ts';
import type { EquipmentBranches } from '../../branches/equipment-branches.ts';
import { cited } from '../../tables/sections.ts';

const NONE: readonly Finding[] = [];

/**
 * Boxes that stand in the open although the rule says that boxes are damp or dry: what the rain reaches is wet, whatever
 * lies beside it. In the open is a raceway in the sun over a roof, and a pedestal where no steel is drawn above it.
 * Nothing is looked at where all are taken as wet.
 */
export function openBoxFindings(
  branches: readonly EquipmentBranches[],
  drops: readonly Drop[],
  raceways: readonly Raceway[],
  members: readonly Member[],
  design: Design,
): readonly Finding[] {
  return design.rules.boxLocation === 'wet' ? NONE : found(branches, drops, raceways, members, design);
}

const found = kept(
  (
    branches: readonly EquipmentBranches[],
    drops: readonly Drop[],
    raceways: readonly Raceway[],
    members: readonly Member[],
    { rules, tables }: Design,
  ): readonly Finding[] => {
    const sunny = new Set(raceways.flatMap(({ id, aboveRoof }) => (aboveRoof === undefined ? [] : [id])));
    const steel = steelOf(members);
    const uncovered = new Set(
      drops.flatMap(({ id, mount, box }) => (mount === 'pedestal' && !isUnder(steel, box) ? [id] : [])),
    );
    const open = new Set<string>();
    for (const { conduits, boxes, shared } of branches) {
      const onRoof = new Set(
        conduits.flatMap(({ from, to, raceways: along }) => (along.some((id) => sunny.has(id)) ? [from, to] : [])),
      );
      for (const { id, under } of [...boxes, ...shared])
        if (under === null && (uncovered.has(id) || onRoof.has(id))) open.add(id);
    }
    if (open.size === 0) return NONE;
    const ids = [...open];
    return [
      {
        severity: 'fail',
        rule: 'box-location',
        about: ids,
        says: `${ids.length === 1 ? `The box ${ids[0]} stands` : `${ids.length} boxes stand`} in the open, and this site takes boxes above grade as ${rules.boxLocation}: boxes, conduit bodies and fittings that the rain reaches are listed for wet locations. Take boxes as wet, or draw the roof's steel above ${ids.length === 1 ? 'it' : 'them'}.`,
        value: ids.length,
        source: cited(tables, 'wetBoxes'),
      },
    ];
  },
);

/** Steel this near in plan holds a roof over a place, ft. Common practice, no source. */
const ROOF_REACH = 10;

/** Whether steel that lies higher is near enough to a place for a roof on it to keep the rain off. */
const isUnder = (steel: Steel, at: Point3): boolean => (nearestMember(steel, at)?.feet ?? Infinity) <= ROOF_REACH;
