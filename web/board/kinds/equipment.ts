import { tablesOf } from '../../../calc/tables/editions.ts';
import { leastWorkingSpace } from '../../../calc/tables/equipment-of.ts';
import { kept } from '../../../routing/kept/kept.ts';
import { boxOf } from '../../../routing/plane/box.ts';
import { type Rectangle, rectangleAt } from '../../../routing/plane/rectangle.ts';
import { inPlan } from '../../../routing/plane/space.ts';
import { type WorkingSpace, workingSpaceOf } from '../../../routing/site/place/working-space.ts';
import type { Equipment, Point2 } from '../../../routing/site/site.ts';
import { drawEquipment } from '../pictures/steel/structure.ts';
import { HANDLE_BESIDE } from './beside.ts';
import type { BoardKind, ElementMark } from './kind.ts';

export interface EquipmentMark extends ElementMark<'equipment'> {
  readonly equipment: Equipment;
  readonly corners: Rectangle;
  readonly space: readonly Point2[] | null;
  readonly words: string;
}

const markOf = kept((equipment: Equipment, least: WorkingSpace): EquipmentMark => {
  const corners = rectangleAt(equipment.at, [equipment.size[0], equipment.size[1]], equipment.rotation ?? 0);
  const space = workingSpaceOf(equipment, least);
  return {
    list: 'equipment',
    id: equipment.id,
    equipment,
    corners,
    space,
    words: ratingOf(equipment),
    ...boxOf([...corners, ...(space ?? []), inPlan(equipment.entry)]),
  };
});

/** What stands beside a piece of equipment on the drawing: its voltage, or a transformer's size and voltages. */
function ratingOf({ kind, volts, phases, kva, primaryVolts, secondaryVolts }: Equipment): string {
  if (kind === 'transformer')
    return [kva && `${kva} kVA`, primaryVolts && secondaryVolts && `${primaryVolts}-${secondaryVolts} V`]
      .filter(Boolean)
      .join(', ');
  if (!volts) return '';
  if (phases === 3 && volts === 208) return '208Y/120 V';
  if (phases === 3 && volts === 480) return '480Y/277 V';
  return `${volts} V`;
}

export const equipment: BoardKind<'equipment', EquipmentMark> = {
  called: 'equipment',
  mark: (element, { rules }) => markOf(element, leastWorkingSpace(tablesOf(rules))),
  also: ({ rules }) => [leastWorkingSpace(tablesOf(rules))],
  // The utility's source may stand far off.
  extent: (mark) => mark.equipment.kind !== 'source',
  keptClear: true,
  pictures: [{ name: 'equipment', over: 170, draw: drawEquipment }],
  hold: { rank: 40, tour: 30, named: true },
  aims: ({ id, equipment: { entry }, corners }, { end }) => {
    end(entry, `entry of ${id}`);
    for (const corner of corners) end(corner, `corner of ${id}`);
  },
  handle: () => ({ shape: 'round', aside: [HANDLE_BESIDE, HANDLE_BESIDE] }),
};
