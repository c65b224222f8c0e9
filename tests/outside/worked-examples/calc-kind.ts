import { CALC_KINDS } from '../../../calc/cli/kinds/index.ts';
import { SILENT } from '../../../calc/words/explain.ts';

/** What `calc KIND` answers; throws where it refuses. */
export function calcKind<Out>(kind: string, input: object): Out {
  const result = CALC_KINDS.get(kind)?.(JSON.parse(JSON.stringify(input)), SILENT);
  if (!result?.ok) throw new Error(`${kind} refused ${JSON.stringify(input)}: ${JSON.stringify(result?.errors)}`);
  return result.value as Out;
}
