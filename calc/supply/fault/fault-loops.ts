import type { Metal } from '../../../routing/site/schema/vocabulary.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { resistanceShare } from '../../tables/conductor-of.ts';
import { type Phasor, plus, scaled } from '../load-flow/phasor.ts';
import type { SupplyModel } from '../load-flow/supply-model.ts';
import type { SupplyNode, SupplyTree } from '../tree/supply-tree.ts';
import { toNeutral } from '../tree/system.ts';
import type { FaultCase } from './fault-case.ts';

/** Ohms that a fault meets from the supply on, on the volts of its place. */
export interface FaultLoops {
  /** Of one line: three phases bolted together; twice this between two lines. */
  readonly line: Phasor;
  /** From line to neutral volts through a line and back on the neutral; null where there is none. */
  readonly neutral: Phasor | null;
  /** The same, back on the grounding conductor; null where nothing is grounded, or its size has no ohms. */
  readonly ground: Phasor | null;
  /** No source on the way gave a figure: the supply is taken as unlimited. */
  readonly isUnlimited: boolean;
}

const NOTHING: Phasor = { re: 0, im: 0 };

/**
 * Halves of a winding with its middle out: to the middle 1.5 of the resistance and 1.2 of the reactance of the whole, on
 * a quarter of its ohms; here of half the ohms of the whole, as `line` has them. From memory: utility handbooks; a fault
 * to neutral at its terminals is so 1.33 to 1.67 times one across both lines.
 */
const toMiddle = ({ re, im }: Phasor): Phasor => ({ re: 0.75 * re, im: 0.6 * im });

/**
 * Loops of a fault at each node; null past a feeder or transformer of which nothing is known. By symmetrical components,
 * as a source has its zero sequence where it gives one figure for all, a delta-wye transformer shows two thirds of what
 * is ahead of it to a fault to ground, and conductors do not couple. Motors left out.
 * @param grounds ohms of the grounding conductors beside each node's feeder, at 75 °C
 */
export function faultLoops(
  { nodes }: SupplyTree,
  model: SupplyModel,
  grounds: readonly (Phasor | null)[],
  { conductorC, impedanceShare }: FaultCase,
  tables: CodeTables,
): readonly (FaultLoops | null)[] {
  const loops: (FaultLoops | null)[] = [];
  const at = (ohms: Phasor | null, metal: Metal): Phasor | null =>
    ohms === null ? null : { re: ohms.re * resistanceShare(tables, metal, conductorC), im: ohms.im };
  nodes.forEach((node, place) => {
    const { parent, feeder, primary } = node;
    let arriving: FaultLoops | null;
    if (feeder === null) arriving = primary === null ? sourceLoops(node) : UNLIMITED;
    else {
      const { metal } = feeder.conductor;
      const above = loops[parent] ?? null;
      arriving = afterFeeder(
        above,
        at(model.feederOhms[place] ?? null, metal),
        at(grounds[place] ?? null, metal),
        nodes[parent]!,
      );
    }
    if (primary === null) loops.push(arriving);
    else {
      const winding = model.windingOhms[place] ?? null;
      // Where nothing is known of the supply ahead, it is taken as unlimited.
      loops.push(
        winding === null ? null : afterTransformer(arriving ?? UNLIMITED, scaled(winding, impedanceShare), node),
      );
    }
  });
  return loops;
}

const UNLIMITED: FaultLoops = { line: NOTHING, neutral: NOTHING, ground: NOTHING, isUnlimited: true };

/** Of the utility, from the figure that it gives: all reactance where it gives no X/R, which errs to more current. */
function sourceLoops({ equipment: { faultAmps, faultXr }, system }: SupplyNode): FaultLoops {
  const { neutral, phases, volts } = system;
  const known = (loops: FaultLoops): FaultLoops =>
    neutral === null ? { ...loops, neutral: null, ground: null } : loops;
  if (faultAmps === undefined) return known(UNLIMITED);
  const z = phases === 3 ? toNeutral(system) / faultAmps : volts / (2 * faultAmps);
  const re = faultXr === undefined ? 0 : z / Math.hypot(1, faultXr);
  const line = { re, im: faultXr === undefined ? z : faultXr * re };
  // One figure for all: to neutral as much as between three lines, or half as much again as across a winding.
  const back = neutral === 'halfway' ? scaled(line, 1 / 1.5) : line;
  return known({ line, neutral: back, ground: back, isUnlimited: false });
}

function afterFeeder(
  above: FaultLoops | null,
  ohms: Phasor | null,
  ground: Phasor | null,
  { system }: SupplyNode,
): FaultLoops | null {
  if (above === null || ohms === null) return null;
  const grounded = system.neutral !== null;
  return {
    line: plus(above.line, ohms),
    neutral: above.neutral === null || !grounded ? null : plus(above.neutral, scaled(ohms, 2)),
    ground: above.ground === null || ground === null || !grounded ? null : plus(above.ground, plus(ohms, ground)),
    isUnlimited: above.isUnlimited,
  };
}

function afterTransformer(
  { line, isUnlimited }: FaultLoops,
  winding: Phasor,
  { system, primary }: SupplyNode,
): FaultLoops {
  const ahead = scaled(line, (system.volts / primary!.volts) ** 2);
  const back =
    system.neutral === null
      ? null
      : system.phases === 3
        ? plus(winding, scaled(ahead, 2 / 3))
        : plus(toMiddle(winding), scaled(ahead, 1 / 2));
  return { line: plus(winding, ahead), neutral: back, ground: back, isUnlimited };
}

/** At the end of a branch behind what feeds it: two or three lines, and the grounding conductor that comes with them. */
export const endOfBranch = (loops: FaultLoops, line: Phasor, ground: Phasor | null): FaultLoops => ({
  line: plus(loops.line, line),
  neutral: null,
  ground: loops.ground === null || ground === null ? null : plus(loops.ground, plus(line, ground)),
  isUnlimited: loops.isUnlimited,
});
