import type { SectionPart, SectionShape } from '../../space/section/shape.ts';
import type { DrawnItem } from './drawing.ts';
import { lineItem } from './items.ts';
import type { LayerName } from './layers.ts';

const LAYER: Readonly<Record<SectionPart, LayerName>> = {
  vehicle: 'vehicles',
  column: 'columns',
  equipment: 'equipment',
  member: 'framing',
  conduit: 'raceways',
  raceway: 'raceways',
  trapeze: 'drops',
  rod: 'dimensions',
  box: 'drops',
  retractor: 'drops',
  'pull point': 'pullPoints',
  'cord at rest': 'cords',
  'cord out': 'cords',
  'inlet zone': 'inletZones',
  trench: 'grade',
};

/** A shape of a section as it is drawn: raceways that are among the `existing` as existing work. */
export function shapeItem(shape: SectionShape, existing: ReadonlySet<string>): DrawnItem {
  const usual = LAYER[shape.part];
  const layer = usual === 'raceways' && existing.has(shape.id) ? 'existingRaceways' : usual;
  if (shape.kind === 'round') return { kind: 'circle', layer, at: shape.at, radius: shape.radius };
  return lineItem(layer, shape.points, shape.kind === 'outline');
}
