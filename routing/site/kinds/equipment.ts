import * as v from 'valibot';
import { rectangleAt } from '../../plane/rectangle.ts';
import { inSpace, rectangleTurn } from '../place/motion.ts';
import {
  filledText,
  id,
  maybe,
  nonNegative,
  number,
  phaseCount,
  point2,
  point3,
  positive,
  positiveLength,
  told,
  wholePositive,
} from '../schema/schema-parts.ts';
import { ARC_REDUCTIONS, ELECTRODES, EQUIPMENT_KINDS } from '../schema/vocabulary.ts';
import type { KindDocs, Of, PlacedKind } from './kind.ts';

export const equipmentSchema = v.strictObject({
  id,
  kind: v.picklist(EQUIPMENT_KINDS),
  at: told(point2, 'Centre of its footprint.'),
  size: told(v.strictTuple([positiveLength, positiveLength, positiveLength]), 'Width, depth, height.'),
  rotation: maybe(told(number, 'Degrees.')),
  entry: told(point3, 'Where raceways enter it.'),
  volts: maybe(told(positive, 'Line to line.')),
  phases: maybe(phaseCount),
  busAmps: maybe(positive),
  mainAmps: maybe(positive),
  spaces: maybe(told(wholePositive, 'Pole spaces for breakers.')),
  workingSpace: maybe(told(positiveLength, 'Depth kept clear before it.')),
  condition: maybe(
    told(
      v.picklist([1, 2, 3]),
      'Condition before it by which the code asks for the depth of its working space (1 nothing grounded opposite, 2 grounded parts, 3 live parts), where it is not what the drawing shows.',
    ),
  ),
  managedAmps: maybe(told(positive, 'Line current that a load-management system holds its chargers to.')),
  kva: maybe(positive),
  primaryVolts: maybe(positive),
  secondaryVolts: maybe(positive),
  impedancePercent: maybe(positive),
  xr: maybe(told(nonNegative, 'Ratio of reactance to resistance.')),
  faultAmps: maybe(told(positive, 'Available symmetrical fault current at the terminals of a source, amperes.')),
  faultXr: maybe(told(nonNegative, 'Ratio of reactance to resistance of what is ahead of a source.')),
  existingAmps: maybe(
    told(positive, 'Greatest measured demand of what a source feeds already and the file does not draw, line amperes.'),
  ),
  electrode: maybe(
    told(
      v.picklist(ELECTRODES),
      'What its system, or the structure that it stands at, is grounded to: of service equipment, a transformer, or a board.',
    ),
  ),
  interruptingAmps: maybe(told(positive, 'Interrupting rating of the assembly, or of its weakest device, amperes.')),
  seriesAmps: maybe(
    told(
      positive,
      'Fault current up to which its devices are series rated with the device ahead, amperes: of a combination that was tested, as marked by its manufacturer.',
    ),
  ),
  seriesWith: maybe(told(filledText, 'The device ahead that this combination was tested with, as marked.')),
  groundFault: maybe(told(v.boolean(), 'Whether its main has ground-fault protection of equipment.')),
  arcEnergy: maybe(told(v.picklist(ARC_REDUCTIONS), 'The documented way to less arc energy that its main has.')),
  existing: maybe(told(v.boolean(), 'Whether it stands already: it is neither bought nor set.')),
  lockable: maybe(
    told(
      v.boolean(),
      'Whether the breakers in it are readily accessible and can be locked open, so that one may be the disconnect of what it feeds.',
    ),
  ),
});

export type Equipment = Of<typeof equipmentSchema>;

export const equipment: PlacedKind<typeof equipmentSchema> = {
  schema: equipmentSchema,
  one: 'equipment',
  many: 'pieces of equipment',
  anyOne: 'a piece of equipment',
  moved: (equipment, motion) => ({
    ...equipment,
    at: motion.point(equipment.at),
    ...rectangleTurn(equipment.rotation, motion),
    entry: inSpace(equipment.entry, motion),
  }),
  points: ({ at, size, rotation = 0 }) => rectangleAt(at, [size[0], size[1]], rotation),
  anchor: ({ at }) => at,
  shape: 'ring',
  parts: {
    of: ({ entry }) => [{ part: { kind: 'entry' }, at: entry }],
    moved: (equipment, _, to) => ({ ...equipment, entry: to(equipment.entry) }),
    without: (equipment) => equipment,
  },
};

export const equipmentDocs: KindDocs<typeof equipmentSchema> = {
  says: 'Service, switchboards, panelboards, transformers, disconnects, inverters.',
  fields: {
    kind: 'What it is; source is what the supply comes from.',
    phases: 'Phases: 1 or 3.',
    busAmps: 'Rating of its bus, amperes.',
    mainAmps: 'Rating of its main breaker, amperes; none where absent.',
    kva: 'Rating of a transformer, kVA.',
    primaryVolts: 'Line to line, at the side that it is fed from.',
    secondaryVolts: 'Line to line, at the side that it feeds.',
    impedancePercent: 'Impedance of a transformer by its nameplate, percent.',
  },
  examples: [
    {
      id: 'U1',
      kind: 'source',
      at: [-30, -10],
      size: [3, 3, 5],
      entry: [-30, -10, 0],
      volts: 480,
      phases: 3,
      xr: 6,
      faultAmps: 22000,
      faultXr: 6,
      electrode: 'rods',
      existingAmps: 40,
      interruptingAmps: 25000,
      seriesAmps: 65000,
      seriesWith: 'the 400 A main of SVC',
      groundFault: true,
      arcEnergy: 'maintenance-switch',
      existing: true,
      lockable: true,
      condition: 2,
    },
    {
      id: 'T1',
      kind: 'transformer',
      at: [-20, -10],
      size: [3, 3, 4],
      rotation: 90,
      entry: [-20, -10, 2],
      kva: 75,
      primaryVolts: 480,
      secondaryVolts: 208,
      impedancePercent: 4.5,
      xr: 2,
    },
    {
      id: 'P1',
      kind: 'panelboard',
      at: [-12, 0],
      size: [2, 0.5, 4],
      entry: [-12, 0, 6],
      volts: 208,
      phases: 3,
      busAmps: 400,
      mainAmps: 400,
      spaces: 42,
      workingSpace: 3.5,
      managedAmps: 200,
    },
  ],
};
