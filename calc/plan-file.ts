import type { Run } from '../routing/network/run.ts';
import type { Reach } from '../routing/reach/reach-result.ts';
import type { Finding } from '../routing/site/finding.ts';
import type { Units } from '../routing/site/vocabulary.ts';
import type { Box, Circuit, Conduit, Supply, TakeoffRow } from './plan-shape.ts';

/** A plan as it is published: plain JSON, lengths and coordinates in the units of its site file, at full precision. */
export interface PlanFile {
  readonly format: 'overrow/plan';
  readonly version: 1;
  /** Name of the site. */
  readonly site: string;
  readonly units: Units;
  /** Edition of the code that the site asks for. */
  readonly code: string;
  readonly runs: readonly Run[];
  readonly reach: readonly Reach[];
  readonly circuits: readonly Circuit[];
  readonly conduits: readonly Conduit[];
  readonly boxes: readonly Box[];
  readonly supply: Supply;
  readonly takeoff: readonly TakeoffRow[];
  readonly findings: readonly Finding[];
}
