import { parseLength } from '../../../../routing/site/numbers/parse-length.ts';
import type { Units } from '../../../../routing/site/schema/vocabulary.ts';

export const feetOf = (text: string, units: Units = 'ft'): number | string => {
  const read = parseLength(text, units);
  return read.ok ? read.feet : `${read.at}: ${read.says}`;
};
