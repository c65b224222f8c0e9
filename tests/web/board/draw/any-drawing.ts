import fc from 'fast-check';
import { CANOPY_FORMS, LEVELS_AT } from '../../../../routing/propose/rows/canopy-slope.ts';
import { METHODS, PLACES, SURFACES } from '../../../../routing/site/schema/vocabulary.ts';
import type { Site, SiteFile } from '../../../../routing/site/site.ts';
import { type BoardDraft, type DrawTool, EMPTY, type Spot } from '../../../../web/board/draw/draft.ts';
import {
  FIRST_DRAW_OPTIONS as FIRST_OPTIONS,
  LAYOUT_TOOLS,
  OTHER_TOOLS,
  toolOf,
} from '../../../../web/board/draw/tool-names.ts';
import { KIND_DEFAULTS } from '../../../../web/board/draw/tools/equipment.ts';
import type { DrawOptions, DrawToolName } from '../../../../web/board/kinds/kinds.ts';
import type { Edit } from '../../../../web/document/change/edit.ts';
import { chargeStalls } from '../../../../web/document/edits/charging/charge-stalls.ts';
import '../../../../web/board/draw/tools/tools.ts';

/** What a hand that does not look draws: a tool, places, and options that a form could hold. */
export interface Drawing {
  readonly tool: DrawToolName | 'charge';
  readonly places: readonly (readonly [number, number])[];
  readonly onto: readonly number[];
  readonly options: DrawOptions;
}

const feet = fc.integer({ min: -1600, max: 1600 }).map((n) => n / 8);
const someOf = <T>(of: readonly T[]): fc.Arbitrary<T> => fc.constantFrom(...of);

const stalls = fc.record({
  width: fc.integer({ min: 16, max: 48 }).map((n) => n / 4),
  depth: fc.integer({ min: 24, max: 100 }).map((n) => n / 4),
  angle: someOf([90, 75, 60, 45, 30, 0, 52.5]),
  lean: someOf(['forward', 'back'] as const),
  rows: someOf(['one', 'across', 'heads'] as const),
  aisle: someOf([0, 13.5, 24]),
  line: someOf(['entry', 'head'] as const),
  side: someOf(['left', 'right'] as const),
  count: fc.option(fc.integer({ min: 1, max: 30 })),
  parking: someOf(['nose-in', 'back-in', 'either'] as const),
  vehicle: someOf([null, 'suv', 'pickup']),
  accessible: fc.uniqueArray(fc.integer({ min: 1, max: 40 }), { maxLength: 3 }),
  vanAccessible: fc.uniqueArray(fc.integer({ min: 1, max: 40 }), { maxLength: 3 }),
  prefix: someOf(['', 'N', 'north ']),
  start: fc.integer({ min: 1, max: 500 }),
});

const canopy = fc.record({
  spacing: fc.integer({ min: 4, max: 60 }),
  columnLines: someOf([1, 2] as const),
  overhang: fc.integer({ min: 0, max: 20 }),
  endOverhang: fc.integer({ min: 0, max: 5 }),
  purlinSpacing: someOf([0, 4, 6]),
  form: someOf(CANOPY_FORMS),
  tilt: fc.integer({ min: 0, max: 90 }).map((n) => n / 2),
  rises: someOf(['left', 'right'] as const),
  levelAt: someOf(LEVELS_AT),
  beamElevation: someOf([0, 9.5, 12]),
  purlinsAbove: someOf([-0.5, 0, 0.5]),
  side: someOf(['left', 'right'] as const),
  gridlines: fc.boolean(),
});

const options: fc.Arbitrary<DrawOptions> = fc
  .record({
    stalls,
    canopy,
    kind: someOf(['source', 'service', 'panelboard', 'switchboard', 'transformer', 'disconnect', 'inverter'] as const),
    fedFrom: someOf(['', 'SVC', 'P1', 'T1', 'nothing']),
    rotation: someOf([0, 90, 37]),
    method: someOf(METHODS),
    place: someOf(PLACES),
    surface: someOf(SURFACES),
    elevation: someOf([-2, 0, 9.5, 11, 11.25]),
    belowMembers: someOf([null, 0, 1]),
    mount: someOf(['overhead', 'pedestal', 'wall'] as const),
    retractorBelow: someOf([null, 0, 1]),
    withCharger: fc.boolean(),
  })
  .map(
    ({
      stalls: row,
      canopy: bays,
      kind,
      fedFrom,
      rotation,
      method,
      place,
      surface,
      elevation,
      belowMembers,
      ...drop
    }) => ({
      ...FIRST_OPTIONS,
      stalls: { ...FIRST_OPTIONS.stalls, ...row },
      canopy: { ...FIRST_OPTIONS.canopy, ...bays },
      equipment: { ...FIRST_OPTIONS.equipment, kind, ...KIND_DEFAULTS[kind], fedFrom, rotation },
      raceway: { method, place, surface, elevation, belowMembers },
      drops: { ...FIRST_OPTIONS.drops, ...drop, elevation: Math.max(0, elevation) },
      keepout: { ...FIRST_OPTIONS.keepout, from: elevation, shape: elevation > 6 ? 'round' : 'corners' },
      pullpoint: { elevation },
      member: { elevation },
      column: { ...FIRST_OPTIONS.column, rotation },
    }),
  );

export const anyDrawing: fc.Arbitrary<Drawing> = fc.record({
  tool: someOf([...LAYOUT_TOOLS, ...OTHER_TOOLS, 'charge' as const]),
  places: fc.array(fc.tuple(feet, feet), { minLength: 1, maxLength: 6 }),
  onto: fc.array(fc.nat(), { minLength: 1, maxLength: 6 }),
  options,
});

/** The tool that a name stands for by the options in its form. */
function drawerOf(tool: DrawToolName, all: DrawOptions): DrawTool<unknown> {
  const own = toolOf(tool) as DrawTool<unknown>;
  return own.instead?.(all[tool]) ?? own;
}

/** The draft that a hand makes of its places, some of them on what stands already. */
function draftOf({ tool, places, onto, options: all }: Drawing, file: SiteFile, site: Site): BoardDraft {
  if (tool === 'charge') return EMPTY;
  const drawer = drawerOf(tool, all);
  const entries = [
    ...site.equipment.map(
      ({ id, entry }): Spot => ({ at: [entry[0], entry[1]], z: entry[2], ref: { list: 'equipment', id } }),
    ),
    ...site.raceways.map(
      ({ id, path }): Spot => ({ at: [path[0]![0], path[0]![1]], z: path[0]![2], ref: { list: 'raceways', id } }),
    ),
    ...site.members.map(({ id, from }): Spot => ({ at: [from[0], from[1]], z: from[2], ref: { list: 'members', id } })),
  ];
  let draft = EMPTY;
  const most = drawer.shape === 'point' ? 1 : drawer.shape === 'line' ? 2 : places.length;
  for (const [i, at] of places.slice(0, most).entries()) {
    const held = onto[i % onto.length]! % 3 === 0 ? entries[onto[0]! % Math.max(1, entries.length)] : undefined;
    const spot = held ?? { at, z: null, ref: null };
    const more = drawer.added ? drawer.added({ file, site }, draft, spot, all[tool] as never) : [spot];
    draft = { spots: [...draft.spots, ...more], next: null, whole: false };
  }
  return { ...draft, whole: true };
}

/** The edit that a drawing comes to on a file; null where it comes to nothing. */
export function editOfDrawing(file: SiteFile, site: Site, drawing: Drawing): Edit | null {
  const { tool, options: all, onto } = drawing;
  if (tool !== 'charge')
    return drawerOf(tool, all).edit({ file, site }, draftOf(drawing, file, site), all[tool] as never);
  const stalls = site.stalls.filter((_, i) => (i + onto[0]!) % 4 === 0).slice(0, 5);
  return (
    chargeStalls(
      file,
      site,
      stalls.map(({ id }) => id),
      all.drops,
    )?.edit ?? null
  );
}
