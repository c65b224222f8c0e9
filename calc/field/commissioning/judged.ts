import type { Limit } from './limits.ts';
import { type Measure, type MeterReading, unitWords } from './measures.ts';

/** How a measure stands: read and within its limit, past it, not to be judged yet, said in two ways, or not read. */
export type ReadingStanding = 'passes' | 'fails' | 'not judged' | 'two say' | 'not measured' | 'not asked';

export interface JudgedReading {
  readonly standing: ReadingStanding;
  /** Why, where it does not simply pass. */
  readonly says: string;
}

const figure = (value: number): string => String(Number(value.toFixed(2)));

/** A reading held to its limit. What two people read otherwise is for them to decide. */
export function judged(measure: Measure, limit: Limit, reading: MeterReading | null, conflict: boolean): JudgedReading {
  if (conflict) return { standing: 'two say', says: 'two people read different things' };
  if (reading === null || (reading.value === undefined && reading.word === undefined))
    return measure.isOptional ? { standing: 'not asked', says: '' } : { standing: 'not measured', says: '' };
  if (limit.lacks !== undefined) return { standing: 'not judged', says: `state ${limit.lacks}` };
  const { value, word } = reading;
  if (limit.word !== undefined)
    return word === limit.word ? PASSES : { standing: 'fails', says: `${word ?? 'nothing'}, where ${limit.says}` };
  const unit = measure.unit === null ? '' : ` ${unitWords(reading.unit ?? measure.unit)}`;
  if (value === undefined) return { standing: 'not judged', says: 'no figure was read' };
  if (limit.least !== undefined && value < limit.least - SLACK)
    return { standing: 'fails', says: `${figure(limit.least - value)}${unit} under ${figure(limit.least)}` };
  if (limit.most !== undefined && value > limit.most + SLACK)
    return { standing: 'fails', says: `${figure(value - limit.most)}${unit} over ${figure(limit.most)}` };
  return PASSES;
}

const PASSES: JudgedReading = { standing: 'passes', says: '' };

/** Of sums of figures that were typed. */
const SLACK = 1e-9;
