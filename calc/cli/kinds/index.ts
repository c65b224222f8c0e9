import type { NewLinearProgram } from '../../day/optimum/linear-program.ts';
import { ampacityKind } from './ampacity.ts';
import { bondingKind } from './bonding.ts';
import { boxKind } from './box.ts';
import { branchKind } from './branch.ts';
import { chargeKind } from './charge.ts';
import { cordKind } from './cord.ts';
import { cutKind } from './cut.ts';
import { disconnectKind } from './disconnect.ts';
import { electrodeKind } from './electrode.ts';
import { expansionKind } from './expansion.ts';
import { faultKind } from './fault.ts';
import { fillKind } from './fill.ts';
import { groundingKind } from './grounding.ts';
import { hungKind } from './hung.ts';
import type { CalcKind } from './kind.ts';
import { loadKind } from './load.ts';
import { longestRunKind } from './longest-run.ts';
import { phasesKind } from './phases.ts';
import { pullBoxKind } from './pull-box.ts';
import { pullingKind } from './pulling.ts';
import { reachKind } from './reach.ts';
import { routeKind } from './route.ts';
import { secondaryKind } from './secondary.ts';
import { tapKind } from './tap.ts';
import { transformerKind } from './transformer.ts';
import { voltageDropKind } from './voltage-drop.ts';
import { workingSpaceKind } from './working-space.ts';

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
