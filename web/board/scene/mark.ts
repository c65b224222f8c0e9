import type { PhasePair } from '../../../calc/plan-file/branches.ts';
import type { Run } from '../../../routing/network/run.ts';
import type { Box } from '../../../routing/plane/box.ts';
import type { Point3 } from '../../../routing/site/site.ts';
import type { Ref } from '../../document/change/element-lists.ts';
import type { AnyMark } from '../kinds/kinds.ts';

/** Insulation color of a line conductor, by trade custom. */
export type LineColor = 'black' | 'red' | 'blue' | 'brown' | 'orange' | 'yellow';

/** What is drawn of a charger's run, which is no element. */
export interface RunMark extends Box {
  readonly list: 'runs';
  readonly run: Run;
  /** Null where it has no circuit. The circuit itself changes with its neighbors' loads; what is drawn does not. */
  readonly phases: PhasePair | null;
  readonly charger: string;
  readonly path: readonly Point3[];
  /** One lane for each of the circuit's lines, in their order A, B, C. */
  readonly lanes: readonly { readonly color: LineColor; readonly lane: -1 | 0 | 1 }[];
  readonly ok: boolean;
}

export type SceneMark = AnyMark | RunMark;

/** The element of a mark; null for what is only a picture of others. */
export const refOf = (mark: SceneMark): Ref | null => (mark.list === 'runs' ? null : { list: mark.list, id: mark.id });
