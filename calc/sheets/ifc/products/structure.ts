import { rectangleAt } from '../../../../routing/plane/rectangle.ts';
import { stallRectangle } from '../../../../routing/site/place/stall-rectangle.ts';
import type { Site } from '../../../../routing/site/site.ts';
import { common, identifier } from '../property-sets.ts';
import { prism, rod, type ShapeRoom } from '../shapes.ts';
import type { Product } from './product.ts';

/** Height of a column where the file gives none, feet. */
const COLUMN = 10;

/** Stalls as parking spaces, columns and steel: what stands already. */
export const structureProducts = (site: Site, room: ShapeRoom): Product[] => [
  ...site.stalls.map((stall): Product => {
    const { id, label = id, use = 'standard', width, depth } = stall;
    const area = room.scaled(room.scaled(width * depth));
    return {
      entity: 'IFCSPACE',
      id: `stall ${id}`,
      name: label,
      type: 'PARKING',
      shape: prism(room, stallRectangle(stall), 0, 0.01),
      facts: { Id: id, Use: use },
      sets: [
        {
          name: 'Pset_SpaceCommon',
          properties: {
            Reference: identifier(id),
            IsExternal: true,
            GrossPlannedArea: { measure: 'IFCAREAMEASURE', value: area },
            HandicapAccessible: use === 'accessible' || use === 'van-accessible',
          },
        },
      ],
    };
  }),
  ...site.columns.map(
    ({ id, at, size, rotation = 0, height = COLUMN }): Product => ({
      entity: 'IFCCOLUMN',
      id: `column ${id}`,
      name: id,
      type: 'COLUMN',
      shape: prism(room, rectangleAt(at, size, rotation), 0, height),
      facts: {},
      sets: [{ name: 'Pset_ColumnCommon', properties: { ...common(id, true), IsExternal: true } }],
    }),
  ),
  ...site.members.map(
    ({ id, from, to }): Product => ({
      entity: 'IFCBEAM',
      id: `member ${id}`,
      name: id,
      type: 'BEAM',
      shape: rod(room, [from, to], 0.25),
      facts: {},
      sets: [{ name: 'Pset_BeamCommon', properties: { ...common(id, true), IsExternal: true } }],
    }),
  ),
];
