import * as v from 'valibot';
import { workingSpaceDepth } from '../../../tables/equipment-of.ts';
import { measured } from '../../../words/measured.ts';
import { nonNegativeFigure, TABLES } from '../fields.ts';
import { answer, kind, refuse } from '../kind.ts';

const schema = v.strictObject({ voltsToGround: nonNegativeFigure, condition: v.picklist([1, 2, 3]) });

const OPPOSITE = { 1: 'clear', 2: 'grounded', 3: 'live' } as const;
const WORDS = { 1: 'nothing live or grounded', 2: 'grounded parts', 3: 'live parts' } as const;

export const workingSpaceKind = kind(schema, ({ voltsToGround, condition }, tell) => {
  const depth = workingSpaceDepth(TABLES, voltsToGround, OPPOSITE[condition]);
  if (depth === null) return refuse('voltsToGround', `past 1000 V, where ${TABLES.workingSpace.source} ends`);
  tell(() => ({
    find: 'depth of the working space',
    formula: 'by the volts to ground and what stands opposite',
    values: {
      'volts to ground': measured(voltsToGround, 'V'),
      opposite: `${WORDS[condition]}, condition ${condition}`,
    },
    result: depth,
    unit: 'ft',
    source: TABLES.workingSpace.source,
  }));
  return answer({ depth });
});
