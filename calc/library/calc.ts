/**
 * The single calculations, each a pure function: code tables first, then what is asked, then who hears the steps. Lengths
 * in feet, areas in square inches, resistances in ohms per 1,000 ft, temperatures in degrees C.
 */
import { NEC_2023 } from '../tables/nec-2023/nec-2023.ts';

export { type BoxInput, boxVolume } from '../branches/boxes/box-volume.ts';
export { type PullBoxInput, pullBox } from '../branches/boxes/pull-box.ts';
export { type ExpansionInput, expansion } from '../branches/expansion.ts';
export { type Fill, type FillInput, fill } from '../branches/home-runs/fill.ts';
export { type PullForces as Pull, type PullInput, type PullSegment, pulling } from '../branches/pulls/pulling.ts';
export { type Ampacity, ampacity, type PowerConductor, type Surroundings } from '../circuits/ampacity.ts';
export { type BondingInput, type BondingJumper, bondingJumper } from '../circuits/bonding-jumper.ts';
export { type Branch, branch, branchBreaker, branchConductor } from '../circuits/branch.ts';
export { type CordInput, cord, type SizedCord as Cord } from '../circuits/cord.ts';
export type { DropConductor, DropMethod } from '../circuits/drop-conductor.ts';
export { type ElectrodeInput, electrodeConductor } from '../circuits/electrode-conductor.ts';
export { type GroundingInput, grounding } from '../circuits/grounding.ts';
export { lineAmps } from '../circuits/line-amps.ts';
export type { VoltDrop as Drop } from '../circuits/line-drop.ts';
export { longestRun } from '../circuits/longest-run.ts';
export { type Ask, type Unprotected, type UnprotectedInput, unprotected } from '../circuits/unprotected.ts';
export { type DropCircuit, voltageDrop } from '../circuits/voltage-drop.ts';
export { type Span, type SpanLoad, type SpanStatics, simpleSpan } from '../steel/simple-span.ts';
export { type ChainStatics, spanChain } from '../steel/span-chain.ts';
export { type Disconnect, type DisconnectInput, disconnect } from '../supply/panels/disconnect.ts';
export { assignPhases, type PhaseAssignment, type PhaseLoads } from '../supply/phases/phases.ts';
export { type BalancedLoad, serviceLoad } from '../supply/service/balanced-load.ts';
export { type TransformerInput, type TransformerResult, transformer } from '../supply/transformers/transformer.ts';
export type { CodeTables } from '../tables/code-tables.ts';
export { tablesFor } from '../tables/editions.ts';
export { type CutPlan, type CutWish, cut } from '../takeoff/cutting/cut.ts';
export { explained, type Step, type Tell } from '../words/explain.ts';

/** The edition whose tables are held, NFPA 70 of 2023. */
export const NEC: typeof NEC_2023 = NEC_2023;
