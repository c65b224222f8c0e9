import { kept } from '../../../routing/kept/kept.ts';
import { bendsOf } from '../../../routing/network/bends.ts';
import { hypot2 } from '../../../routing/plane/hypot.ts';
import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import type { Metal, Method, Units } from '../../../routing/site/schema/vocabulary.ts';
import type { Point3 } from '../../../routing/site/site.ts';
import { jamRatio } from '../../branches/pulls/jam-ratio.ts';
import type { ConduitConductor } from '../../plan-file/branches.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { verticalSupportSpacing } from '../../tables/raceway-of.ts';

/** A conduit as it is pulled: what it is, where it goes and what is in it. */
export interface Pulled {
  /** How it is spoken of, such as "Conduit P1-3.2", and what it is about: asked for where there is a note. */
  readonly what: () => string;
  readonly about: () => readonly string[];
  readonly method: Method;
  readonly tradeSize: string | null;
  readonly path: readonly Point3[];
  readonly conductors: readonly ConduitConductor[];
  readonly metal: Metal;
}

const linesIn = (conductors: readonly ConduitConductor[]): readonly ConduitConductor[] =>
  conductors.filter(({ use }) => use === 'line');

/** What there is to mind when a conduit is pulled: three lines that may jam at a bend, risers that need a support. */
export function pullingNotes(pulled: Pulled, tables: CodeTables, units: Units): readonly Finding[] {
  const jam = jamNote(pulled, tables);
  const riser = riserNote(pulled, tables, units);
  return jam === NOTHING ? riser : [...jam, ...riser];
}

const NOTHING: readonly Finding[] = [];

/** Whether there can be anything to mind of conductors that are pulled along a path that goes up and down so many feet in all. */
export function mayHavePullingNotes(
  conductors: readonly ConduitConductor[],
  upAndDown: number,
  tables: CodeTables,
  metal: Metal,
): boolean {
  const { three, rise } = pullingConcerns(conductors, tables, metal);
  return three !== null || upAndDown > rise;
}

/** What is minded of conductors: the three alike lines that may jam, and the feet of riser that need no support. */
const pullingConcerns = kept((conductors: readonly ConduitConductor[], tables: CodeTables, metal: Metal) => {
  const lines = linesIn(conductors);
  return {
    three: lines.length === 1 && lines[0]!.count === 3 ? lines[0]! : null,
    rise: Math.min(...lines.map(({ size }) => verticalSupportSpacing(tables, size, metal))),
  };
});

function jamNote(pulled: Pulled, tables: CodeTables): readonly Finding[] {
  const { what, about, method, tradeSize, path, conductors, metal } = pulled;
  const line = pullingConcerns(conductors, tables, metal).three;
  if (tradeSize === null || line === null || bendsOf(path).length === 0) return NOTHING;
  const { ratio, likely } = jamRatio(tables, { method, tradeSize }, line);
  if (!likely) return NOTHING;
  const { low, high, source } = tables.jam;
  return [
    {
      severity: 'note',
      rule: 'jam-ratio',
      about: about(),
      says: `${what()}, ${tradeSize} in. ${method}, is ${ratio.toFixed(2)} times as wide as one of its three ${line.size} lines: between ${low} and ${high} they may jam at a bend. The next trade size is past that.`,
      value: ratio,
      limit: high,
      source,
    },
  ];
}

function riserNote(pulled: Pulled, tables: CodeTables, units: Units): readonly Finding[] {
  const { what, about, path, conductors, metal } = pulled;
  const rise = tallestRise(path);
  const { rise: allowed } = pullingConcerns(conductors, tables, metal);
  if (rise <= allowed) return NOTHING;
  return [
    {
      severity: 'note',
      rule: 'vertical-support',
      about: about(),
      says: `${what()} rises ${printLength(rise, units)}; its conductors are to be supported at the top, and again wherever ${printLength(allowed, units)} of them hang free.`,
      value: rise,
      limit: allowed,
      unit: 'ft',
      source: tables.verticalSupports.source,
    },
  ];
}

/** Feet of the tallest part of a path that goes on rising, or falling, more than it goes along. */
export function tallestRise(path: readonly Point3[]): number {
  let tallest = 0;
  let rise = 0;
  for (let i = 1; i < path.length; i++) {
    const a = path[i - 1]!;
    const b = path[i]!;
    const up = b[2] - a[2];
    if (Math.abs(up) <= hypot2(b[0] - a[0], b[1] - a[1])) rise = 0;
    else rise = rise * up > 0 ? rise + up : up;
    tallest = Math.max(tallest, Math.abs(rise));
  }
  return tallest;
}
