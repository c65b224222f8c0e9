import { METRES_PER_FOOT } from '../../../routing/site/numbers/units.ts';
import type { Units } from '../../../routing/site/schema/vocabulary.ts';

/** The step of moves: 3 in., or a decimetre on a metric site. Feet. */
export const stepOf = (units: Units): number => (units === 'm' ? 0.1 / METRES_PER_FOOT : 0.25);

/** The large step of the arrow keys: a foot, or half a metre. Feet. */
export const longStepOf = (units: Units): number => (units === 'm' ? 0.5 / METRES_PER_FOOT : 1);

export const toStep = (value: number, step: number): number => Math.round(value / step) * step;
