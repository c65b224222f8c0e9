import { BOUNDARY_WORDS } from '../../../routing/site/schema/vocabulary.ts';
import type { Site } from '../../../routing/site/site.ts';
import { guidOf } from './guid.ts';
import { addPropertySet } from './property-sets.ts';
import { placedIn, polyline, type ShapeRoom, shape } from './shapes.ts';
import { of, stepText } from './step.ts';

/**
 * Property, right-of-way and easement lines and middles of streets as annotations, each a line on the ground with its kind,
 * name and setback as properties: IFC 4 has no class for them. Their records, for the site to contain.
 */
export const boundaryRecords = (room: ShapeRoom, site: Site): readonly number[] =>
  site.boundaries.map(({ id, path, kind = 'property', name, setback }) => {
    const { writer, scaled } = room;
    const curves = writer.add('IFCGEOMETRICCURVESET', [of(polyline(room, path))]);
    const record = writer.add(
      'IFCANNOTATION',
      stepText(guidOf(`boundary ${id}`)),
      null,
      stepText(id),
      name === undefined ? null : stepText(name),
      stepText(BOUNDARY_WORDS[kind]),
      of(placedIn(room)),
      of(shape(room, 'Annotation', 'GeometricCurveSet', curves)),
    );
    const guids = {
      guid: guidOf(`set Overrow_Plan boundary ${id}`),
      relation: guidOf(`has Overrow_Plan boundary ${id}`),
    };
    addPropertySet(writer, record, guids, {
      name: 'Overrow_Plan',
      properties: {
        Kind: BOUNDARY_WORDS[kind],
        Name: name,
        Setback: setback === undefined ? undefined : { measure: 'IFCLENGTHMEASURE', value: scaled(setback) },
      },
    });
    return record;
  });
