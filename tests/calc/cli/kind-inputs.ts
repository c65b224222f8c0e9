import { CALC_KINDS, SOLVED_KINDS } from '../../../calc/cli/kinds/index.ts';
import { loadSolver } from '../../../calc/cli/solver.ts';
import { SILENT } from '../../../calc/words/explain.ts';

const solver = await loadSolver();

/** Every single calculation, those that need a solver too. */
export const ALL = new Map([...CALC_KINDS, ...[...SOLVED_KINDS].map(([name, made]) => [name, made(solver)] as const)]);

export const calc = (kind: string, input: unknown) => {
  const work = ALL.get(kind);
  if (work === undefined) throw new Error(`no kind ${kind}`);
  return work(input, SILENT);
};
export const value = (kind: string, input: unknown) => {
  const result = calc(kind, input);
  if (!result.ok) throw new Error(JSON.stringify(result.errors));
  return result.value;
};
/** Places that a refusal names, with what it says there. */
export const errors = (kind: string, input: unknown): Readonly<Record<string, string>> => {
  const result = calc(kind, input);
  if (result.ok) throw new Error(`answered ${JSON.stringify(result.value)}`);
  return Object.fromEntries(result.errors.map(({ place, says }) => [place, says]));
};

export const drop = {
  phases: 1,
  volts: 240,
  amps: 32,
  length: 150,
  conductor: { size: '8', metal: 'copper' },
  method: 'exact',
  raceway: 'PVC',
  powerFactor: 0.99,
};
const { length: _, ...shortened } = drop;
export const dropWithoutLength = shortened;
export const duty = {
  amps: 32,
  continuous: true,
  metal: 'copper',
  insulation: 'THWN-2',
  ambientC: 30,
  currentCarrying: 2,
  terminalC: 75,
};
const { amps: __, ...unrated } = duty;
export const dutyWithoutAmps = unrated;
export const unit = { kva: 150, primaryVolts: 480, secondaryVolts: 208, phases: 3 };
export const eights = [{ size: '8', insulation: 'THWN-2', count: 3 }];
export const pull = { segments: [{ kind: 'straight', length: 100 }], weightPerFoot: 1, friction: 0.5 };

export const square = {
  nodes: 4,
  root: 0,
  terminals: [2, 2, 3],
  edges: [
    [0, 1, 10, 1],
    [1, 2, 10, 1],
    [2, 3, 10, 1],
    [0, 3, 10, 2],
  ],
  price: { raceway: 1, conductor: 1, conduit: 1, circuitsPerConduit: 2 },
};
