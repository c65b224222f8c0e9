import { USUAL_CHARGER, USUAL_DROP, USUAL_PANELBOARD } from '../../../calc/propose/usual.ts';
import type { CanopyShape } from '../../../routing/propose/rows/canopy-bays.ts';
import type { RowShape } from '../../../routing/propose/rows/row-shape.ts';
import { ACCESSIBLE_SLOTS } from '../../../routing/propose/rows/row-slots.ts';
import type {
  AisleKind,
  EquipmentKind,
  KeepoutBlocks,
  Method,
  Mount,
  Place,
  Surface,
} from '../../../routing/site/schema/vocabulary.ts';

/** What the forms of the drawing actions hold. Lengths in feet. Kept while the page is open, never in the file. */
export interface StallsOptions extends Omit<RowShape, 'uses'> {
  /** Stalls to a row; null takes as many as the line has room for. */
  readonly count: number | null;
  readonly parking: 'nose-in' | 'back-in' | 'either';
  readonly vehicle: string | null;
  /** Places of accessible stalls, counted from 1 through both rows. */
  readonly accessible: readonly number[];
  readonly vanAccessible: readonly number[];
  readonly prefix: string;
  readonly start: number;
}

export interface CanopyOptions extends CanopyShape {
  readonly gridlines: boolean;
}

export interface EquipmentOptions {
  readonly kind: EquipmentKind;
  readonly size: readonly [number, number, number];
  readonly rotation: number;
  readonly entryHeight: number;
  readonly volts: number | null;
  readonly phases: 1 | 3 | null;
  readonly busAmps: number | null;
  readonly mainAmps: number | null;
  readonly spaces: number | null;
  readonly workingSpace: number | null;
  readonly kva: number | null;
  readonly primaryVolts: number | null;
  readonly secondaryVolts: number | null;
  /** Equipment that a new feeder comes from; empty for none. */
  readonly fedFrom: string;
}

export interface RacewayOptions {
  readonly method: Method;
  readonly place: Place;
  /** Over it, where it is underground. */
  readonly surface: Surface;
  readonly elevation: number;
  /** How far it hangs below the steel where a vertex is set on a member; null takes no elevation from members. */
  readonly belowMembers: number | null;
}

export interface DropsOptions {
  readonly elevation: number;
  readonly retractorBelow: number | null;
  readonly cord: number;
  readonly restHeight: number;
  readonly mount: Mount;
  readonly withCharger: boolean;
  readonly amps: number;
  readonly volts: number | null;
  readonly phases: 1 | 3;
  readonly pilot: boolean;
  /** Equipment that feeds the charger; empty takes the nearest that can. */
  readonly from: string;
  /** Stalls that the charger serves; null takes the best that no other serves. */
  readonly stalls: readonly string[] | null;
}

export interface KeepoutOptions {
  /** Drawn by its corners, or put round at one press. */
  readonly shape: 'corners' | 'round';
  /** From side to side where it is round. */
  readonly across: number;
  readonly from: number | null;
  readonly to: number | null;
  readonly blocks: readonly KeepoutBlocks[];
}

export interface ColumnOptions {
  readonly size: readonly [number, number];
  readonly rotation: number;
  readonly height: number | null;
}

export interface AisleOptions {
  readonly kind: AisleKind;
}

export interface ElevationOptions {
  readonly elevation: number;
}

interface FirstOptions {
  readonly stalls: StallsOptions;
  readonly canopy: CanopyOptions;
  readonly equipment: EquipmentOptions;
  readonly raceway: RacewayOptions;
  readonly drops: DropsOptions;
  readonly keepout: KeepoutOptions;
  readonly aisle: AisleOptions;
  readonly pullpoint: ElevationOptions;
  readonly member: ElevationOptions;
  readonly column: ColumnOptions;
}

/**
 * What the forms begin with: 9 x 18 ft stalls, columns every three of them, beams at 12 ft and raceway under them at
 * 11 ft, a tilted canopy by 5 degrees. Common practice, no source, but for the accessible stalls.
 */
export const FIRST_OPTIONS: FirstOptions = {
  stalls: {
    width: 9,
    depth: 18,
    angle: 90,
    lean: 'forward',
    rows: 'one',
    aisle: 24,
    line: 'entry',
    side: 'left',
    ...ACCESSIBLE_SLOTS,
    count: null,
    parking: 'either',
    vehicle: null,
    accessible: [],
    vanAccessible: [],
    prefix: '',
    start: 1,
  },
  canopy: {
    spacing: 27,
    columnLines: 1,
    lineGap: 18,
    overhang: 18,
    endOverhang: 0,
    columnSize: 1,
    form: 'flat',
    tilt: 5,
    rises: 'left',
    levelAt: 'columns',
    beamElevation: 12,
    purlinsAbove: 0.5,
    purlinSpacing: 6,
    side: 'left',
    gridlines: true,
  },
  equipment: {
    kind: 'panelboard',
    ...USUAL_PANELBOARD,
    rotation: 0,
    kva: null,
    primaryVolts: null,
    secondaryVolts: null,
    fedFrom: '',
  },
  raceway: { method: 'EMT', place: 'overhead', surface: 'asphalt', elevation: 11, belowMembers: 1 },
  drops: {
    ...USUAL_DROP,
    ...USUAL_CHARGER,
    mount: 'overhead',
    withCharger: true,
    volts: null,
    from: '',
    stalls: null,
  },
  keepout: { shape: 'corners', across: 2, from: null, to: null, blocks: ['raceway', 'drop', 'equipment', 'cord'] },
  aisle: { kind: 'drive' },
  pullpoint: { elevation: 11 },
  member: { elevation: 12 },
  column: { size: [1, 1], rotation: 0, height: 12 },
};
