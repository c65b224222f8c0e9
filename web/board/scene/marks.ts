import type { PhasePair } from '../../../calc/plan-file.ts';
import { kept } from '../../../routing/kept/kept.ts';
import type { Run } from '../../../routing/network/run.ts';
import { boxOf } from '../../../routing/plane/box.ts';
import { direction } from '../../../routing/plane/direction.ts';
import { rectangleAt } from '../../../routing/plane/rectangle.ts';
import { inPlan } from '../../../routing/plane/space.ts';
import type {
  Aisle,
  Column,
  Drop,
  Equipment,
  Keepout,
  Member,
  Point2,
  Pullpoint,
  Raceway,
  Stall,
  Vehicle,
} from '../../../routing/site/site.ts';
import { stallRectangle } from '../../../routing/site/stall-rectangle.ts';
import { workingSpaceOf } from '../../../routing/site/working-space.ts';
import { parkedRectangle } from '../../../routing/standing/parked.ts';
import { lanesOf } from './lanes.ts';
import type {
  AreaMark,
  ColumnMark,
  DropMark,
  EquipmentMark,
  FeederMark,
  MemberMark,
  PullpointMark,
  RacewayMark,
  RunMark,
  StallMark,
} from './mark.ts';

export const stallMark = kept((stall: Stall, vehicle: Vehicle, headClearance: number): StallMark => {
  const corners = stallRectangle(stall);
  const car = parkedRectangle(stall, vehicle, headClearance);
  const [ux, uy] = direction(stall.heading);
  const in1 = Math.min(1.4, stall.depth * 0.08);
  return {
    kind: 'stall',
    stall,
    corners,
    car,
    labelAt: [stall.at[0] + ux * in1, stall.at[1] + uy * in1],
    label: stall.label ?? stall.id,
    ...boxOf([...corners, ...car]),
  };
});

export const columnMark = kept((column: Column): ColumnMark => {
  const corners = rectangleAt(column.at, column.size, column.rotation ?? 0);
  return { kind: 'column', column, corners, ...boxOf(corners) };
});

export const memberMark = kept(
  (member: Member): MemberMark => ({ kind: 'member', member, ...boxOf([inPlan(member.from), inPlan(member.to)]) }),
);

export const keepoutMark = kept((area: Keepout): AreaMark => ({ kind: 'keepout', area, ...boxOf(area.outline) }));
export const aisleMark = kept((area: Aisle): AreaMark => ({ kind: 'aisle', area, ...boxOf(area.outline) }));

export const equipmentMark = kept((equipment: Equipment): EquipmentMark => {
  const corners = rectangleAt(equipment.at, [equipment.size[0], equipment.size[1]], equipment.rotation ?? 0);
  const space = workingSpaceOf(equipment);
  return {
    kind: 'equipment',
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

export const feederMark = kept(
  (from: Equipment, to: Equipment, id: string, existing: boolean, routed: boolean): FeederMark => {
    const ends: [Point2, Point2] = [inPlan(from.entry), inPlan(to.entry)];
    return { kind: 'feeder', id, from: ends[0], to: ends[1], existing, routed, ...boxOf(ends) };
  },
);

export const racewayMark = kept(
  (raceway: Raceway): RacewayMark => ({ kind: 'raceway', raceway, ...boxOf(raceway.path.map(inPlan)) }),
);

export const pullpointMark = kept(
  (pullpoint: Pullpoint): PullpointMark => ({ kind: 'pullpoint', pullpoint, ...boxOf([inPlan(pullpoint.at)]) }),
);

export const dropMark = kept(
  (drop: Drop): DropMark => ({
    kind: 'drop',
    drop,
    ...boxOf([inPlan(drop.box), inPlan(drop.retractor ?? drop.box)]),
  }),
);

export const runMark = (run: Run, phases: PhasePair | null, volts: number): RunMark => ({
  kind: 'run',
  run,
  phases,
  charger: run.charger,
  path: run.path,
  lanes: phases ? lanesOf(phases, volts) : [],
  ok: run.ok,
  ...boxOf(run.path.map(inPlan)),
});
