import * as v from 'valibot';
import { disconnect } from '../../../supply/panels/disconnect.ts';
import { phases, positiveFigure, TABLES } from '../fields.ts';
import { answer, kind } from '../kind.ts';

const schema = v.strictObject({ amps: positiveFigure, volts: positiveFigure, phases });

export const disconnectKind = kind(schema, (input, tell) => {
  const { needed, says } = disconnect(TABLES, input, tell);
  return answer({ needed, says });
});
