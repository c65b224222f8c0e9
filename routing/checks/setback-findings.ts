import { kept } from '../kept/kept.ts';
import { printLength } from '../site/numbers/feet-inches.ts';
import type { Finding } from '../site/rules/finding.ts';
import { BOUNDARY_WORDS } from '../site/schema/vocabulary.ts';
import type { Boundary, Site } from '../site/site.ts';
import { boundaryDistance, isSetOut } from '../standing/boundary-distance.ts';

/** Nearer by less than this, feet, is as far as asked. */
const AS_FAR = 1e-6;

/** What a boundary is called in a sentence: `the right-of-way line Alder Street`. */
export const calledBoundary = ({ id, kind = 'property', name }: Boundary): string =>
  `the ${BOUNDARY_WORDS[kind]} ${name ?? id}`;

/** New equipment that stands nearer to a boundary than the setback that the site states for it (`setback`). Value: feet. */
export const setbackFindings = ({
  boundaries,
  equipment,
  units,
}: Pick<Site, 'boundaries' | 'equipment' | 'units'>): readonly Finding[] => findingsOf(boundaries, equipment, units);

const findingsOf = kept(
  (boundaries: Site['boundaries'], equipment: Site['equipment'], units: Site['units']): readonly Finding[] =>
    boundaries.flatMap((boundary) => {
      const { setback } = boundary;
      if (setback === undefined) return [];
      return equipment.filter(isSetOut).flatMap((one): readonly Finding[] => {
        const { feet } = boundaryDistance(one, boundary);
        if (feet >= setback - AS_FAR) return [];
        return [
          {
            severity: 'fail',
            rule: 'setback',
            about: [one.id, boundary.id],
            says: `${one.id} stands ${printLength(feet, units)} from ${calledBoundary(boundary)}, nearer than the setback of ${printLength(setback, units)} that the site states for it.`,
            value: feet,
            limit: setback,
            unit: 'ft',
            source: 'the setback that the site states',
          },
        ];
      });
    }),
);
