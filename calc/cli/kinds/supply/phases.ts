import * as v from 'valibot';
import { assignPhases, CONNECTIONS } from '../../../supply/phases/phases.ts';
import { positiveFigure } from '../fields.ts';
import { answer, kind } from '../kind.ts';

const schema = v.strictObject({ amps: v.array(positiveFigure), connection: v.picklist(CONNECTIONS) });

export const phasesKind = kind(schema, (input, tell) => {
  const result = assignPhases(input);
  tell(() => ({
    find: 'worst line current',
    formula:
      input.connection === 'line-to-line'
        ? 'greatest of the three line currents, each the phasor sum of the two legs that meet there, over all ways to lay the loads'
        : 'greatest of the three legs, over all ways to lay the loads',
    values: { loads: input.amps.length, 'none can be under': `${result.boundAmps} A`, ...result.legs },
    result: result.worstLineAmps,
    unit: 'A',
    source: result.boundAmps === result.worstLineAmps ? 'exact search' : 'search; not proved best',
  }));
  return answer(result);
});
