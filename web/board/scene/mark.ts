import type { PhasePair } from '../../../calc/plan-file.ts';
import type { Run } from '../../../routing/network/run.ts';
import type { Box } from '../../../routing/plane/box.ts';
import type { Rectangle } from '../../../routing/plane/rectangle.ts';
import type {
  Aisle,
  Column,
  Drop,
  Equipment,
  Keepout,
  Member,
  Point2,
  Point3,
  Pullpoint,
  Raceway,
  Stall,
} from '../../../routing/site/site.ts';

/**
 * What is drawn, each with its box for culling and picking. A mark is the same object for as long as everything that
 * it shows is the same, so that two scenes differ in just those marks that differ.
 */
export interface StallMark extends Box {
  readonly kind: 'stall';
  readonly stall: Stall;
  readonly corners: Rectangle;
  readonly car: Rectangle;
  /** Where the label stands: near the entry, so that no cord or raceway lies over it. */
  readonly labelAt: Point2;
  readonly label: string;
}

export interface ColumnMark extends Box {
  readonly kind: 'column';
  readonly column: Column;
  readonly corners: Rectangle;
}

export interface MemberMark extends Box {
  readonly kind: 'member';
  readonly member: Member;
}

export interface AreaMark extends Box {
  readonly kind: 'keepout' | 'aisle';
  readonly area: Keepout | Aisle;
}

export interface EquipmentMark extends Box {
  readonly kind: 'equipment';
  readonly equipment: Equipment;
  readonly corners: Rectangle;
  readonly space: readonly Point2[] | null;
  readonly words: string;
}

export interface FeederMark extends Box {
  readonly kind: 'feeder';
  readonly id: string;
  readonly from: Point2;
  readonly to: Point2;
  readonly existing: boolean;
  /** It lies along the raceways, which are drawn: the link adds nothing unless it is selected. */
  readonly routed: boolean;
}

export interface RacewayMark extends Box {
  readonly kind: 'raceway';
  readonly raceway: Raceway;
}

export interface PullpointMark extends Box {
  readonly kind: 'pullpoint';
  readonly pullpoint: Pullpoint;
}

export interface DropMark extends Box {
  readonly kind: 'drop';
  readonly drop: Drop;
}

/** Insulation color of a line conductor, by trade custom. */
export type LineColor = 'black' | 'red' | 'blue' | 'brown' | 'orange' | 'yellow';

export interface RunMark extends Box {
  readonly kind: 'run';
  readonly run: Run;
  /** Null where it has no circuit. The circuit itself changes with its neighbors' loads; what is drawn does not. */
  readonly phases: PhasePair | null;
  readonly charger: string;
  readonly path: readonly Point3[];
  /** One lane for each of the circuit's lines, in their order A, B, C. */
  readonly lanes: readonly { readonly color: LineColor; readonly lane: -1 | 0 | 1 }[];
  readonly ok: boolean;
}

export type Mark =
  | StallMark
  | ColumnMark
  | MemberMark
  | AreaMark
  | EquipmentMark
  | FeederMark
  | RacewayMark
  | PullpointMark
  | DropMark
  | RunMark;
