import { METRES_PER_FOOT } from '../../../routing/site/numbers/units.ts';
import type { Units } from '../../../routing/site/schema/vocabulary.ts';
import { of, real, type StepWriter, stepText, word } from './step.ts';

/** The units of a file: lengths in those of the site, angles in radians, electrical ones in SI. */
export function unitAssignment(writer: StepWriter, units: Units): number {
  const si = (kind: string, name: string): number => writer.add('IFCSIUNIT', '*', word(kind), null, word(name));
  const metre = si('LENGTHUNIT', 'METRE');
  const others = [
    si('PLANEANGLEUNIT', 'RADIAN'),
    si('ELECTRICCURRENTUNIT', 'AMPERE'),
    si('ELECTRICVOLTAGEUNIT', 'VOLT'),
    si('POWERUNIT', 'WATT'),
    si('THERMODYNAMICTEMPERATUREUNIT', 'DEGREE_CELSIUS'),
  ].map(of);
  if (units === 'm') return writer.add('IFCUNITASSIGNMENT', [of(metre), ...others]);
  const length = writer.add('IFCDIMENSIONALEXPONENTS', ...[1, 0, 0, 0, 0, 0, 0].map((whole) => ({ whole })));
  const factor = writer.add(
    'IFCMEASUREWITHUNIT',
    { typed: 'IFCLENGTHMEASURE', value: real(METRES_PER_FOOT) },
    of(metre),
  );
  const foot = writer.add('IFCCONVERSIONBASEDUNIT', of(length), word('LENGTHUNIT'), stepText('foot'), of(factor));
  return writer.add('IFCUNITASSIGNMENT', [of(foot), ...others]);
}
