import type { Equipment, Point3 } from '../../../routing/site/site.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import type { NewPanel } from './feed-panels.ts';
import { transformerSize } from './panel-source.ts';
import type { PanelWeights } from './panel-weights.ts';

type Placed = NewPanel & { readonly at: Point3 };

/** Panels on one transformer, the one nearest to the source first, and what it has to carry, A a line. */
export interface TransformerGroup {
  readonly panels: readonly Placed[];
  readonly lineAmps: number;
}

const straight = ([x, y]: Point3, [a, b]: Point3): number => Math.abs(x - a) + Math.abs(y - b);

/**
 * Which new panels hang on one transformer: each has its own at first, and two groups become one while that is cheaper in
 * transformers, the feeders into them and those on to the panels; where sharing is not asked for each keeps its own.
 */
export function transformerGroups(
  panels: readonly Placed[],
  source: Equipment,
  weights: PanelWeights,
  tables: CodeTables,
  isShared: boolean,
): readonly TransformerGroup[] {
  const far = ({ at }: Placed): number => straight(at, source.entry);
  const grouped = (own: readonly Placed[]): TransformerGroup & { readonly cost: number } => {
    const sorted = [...own].sort((a, b) => far(a) - far(b));
    const lineAmps = weights.lineAmps(own.map(({ chargers }) => chargers));
    const size = transformerSize(tables, lineAmps, source.volts!);
    if (size === null) return { panels: sorted, lineAmps, cost: Number.POSITIVE_INFINITY };
    const { itself, feeder, trench } = weights.transformer(size);
    const near = sorted[0]!;
    const secondaries = sorted.reduce((sum, { at, chargers }) => {
      const { feeder: foot, trench: dug } = weights.panel(weights.size(chargers)!);
      return sum + straight(at, near.at) * (foot + dug);
    }, 0);
    return { panels: sorted, lineAmps, cost: itself + far(near) * (feeder + trench) + secondaries };
  };
  let groups = panels.map((one) => grouped([one]));
  if (!isShared) return groups;
  for (;;) {
    let best: { readonly saved: number; readonly next: typeof groups } = { saved: 0, next: groups };
    groups.forEach((one, i) => {
      groups.slice(i + 1).forEach((other, k) => {
        const both = grouped([...one.panels, ...other.panels]);
        const saved = one.cost + other.cost - both.cost;
        if (saved > best.saved + 1e-9)
          best = { saved, next: groups.flatMap((each, j) => (j === i ? [both] : j === i + 1 + k ? [] : [each])) };
      });
    });
    if (best.saved <= 0) return groups;
    groups = best.next;
  }
}
