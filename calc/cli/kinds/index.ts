import type { NewLinearProgram } from '../../day/optimum/linear-program.ts';
import { ampacityKind } from './branches/ampacity.ts';
import { bondingKind } from './branches/bonding.ts';
import { boxKind } from './branches/box.ts';
import { branchKind } from './branches/branch.ts';
import { electrodeKind } from './branches/electrode.ts';
import { expansionKind } from './branches/expansion.ts';
import { fillKind } from './branches/fill.ts';
import { groundingKind } from './branches/grounding.ts';
import { longestRunKind } from './branches/longest-run.ts';
import { pullBoxKind } from './branches/pull-box.ts';
import { pullingKind } from './branches/pulling.ts';
import { voltageDropKind } from './branches/voltage-drop.ts';
import type { CalcKind } from './kind.ts';
import { chargeKind } from './lot/charge.ts';
import { cordKind } from './lot/cord.ts';
import { cutKind } from './lot/cut.ts';
import { hungKind } from './lot/hung.ts';
import { reachKind } from './lot/reach.ts';
import { routeKind } from './lot/route.ts';
import { disconnectKind } from './supply/disconnect.ts';
import { faultKind } from './supply/fault.ts';
import { loadKind } from './supply/load.ts';
import { phasesKind } from './supply/phases.ts';
import { secondaryKind } from './supply/secondary.ts';
import { tapKind } from './supply/tap.ts';
import { transformerKind } from './supply/transformer.ts';
import { workingSpaceKind } from './supply/working-space.ts';

/** The single calculations by name. */
export const CALC_KINDS: ReadonlyMap<string, CalcKind> = new Map([
  ['voltage-drop', voltageDropKind],
  ['longest-run', longestRunKind],
  ['ampacity', ampacityKind],
  ['branch', branchKind],
  ['grounding', groundingKind],
  ['fill', fillKind],
  ['box', boxKind],
  ['pull-box', pullBoxKind],
  ['transformer', transformerKind],
  ['expansion', expansionKind],
  ['pulling', pullingKind],
  ['reach', reachKind],
  ['phases', phasesKind],
  ['cut', cutKind],
  ['route', routeKind],
  ['fault', faultKind],
  ['bonding', bondingKind],
  ['electrode', electrodeKind],
  ['secondary', secondaryKind],
  ['tap', tapKind],
  ['working-space', workingSpaceKind],
  ['hung', hungKind],
  ['load', loadKind],
  ['disconnect', disconnectKind],
  ['cord', cordKind],
]);

/** Those that solve linear programs, made with what solves them. */
export const SOLVED_KINDS: ReadonlyMap<string, (newProgram: NewLinearProgram) => CalcKind> = new Map([
  ['charge', chargeKind],
]);
