import { voltageDrop } from '../../../circuits/voltage-drop.ts';
import { nonNegativeFigure, TABLES } from '../fields.ts';
import { answer, kind, refuse } from '../kind.ts';
import { dropInput, lackingFor } from './drop-input.ts';

export const voltageDropKind = kind(dropInput({ length: nonNegativeFigure }), (input, tell) => {
  const lacking = lackingFor(input.conductor, input);
  if (lacking !== undefined) return refuse('conductor.size', lacking);
  try {
    return answer(voltageDrop(TABLES, input, tell));
  } catch (error) {
    if (error instanceof RangeError) return refuse('length', error.message);
    throw error;
  }
});
