import type { ProposalPart } from './part.ts';

const shown = (value: number, unit: string): string =>
  unit === 'dollars' ? `$${value.toFixed(2)}` : `${Number(value.toFixed(1))}${unit && ` ${unit}`}`;

/** How good a part is: what was sought to be least beside the least that can be; null where nothing was sought. */
export function measureWords({ measure, also = [] }: ProposalPart): string | null {
  if (measure === null) return null;
  return [measure, ...also].map(oneMeasure).join('; ');
}

function oneMeasure({ of, value, bound, unit }: NonNullable<ProposalPart['measure']>): string {
  if (value <= bound * (1 + 1e-9)) return `${of}: ${shown(value, unit)}, proved the least of what was looked at`;
  const off = ((value / bound - 1) * 100).toFixed(1);
  return `${of}: ${shown(value, unit)}; at least ${shown(bound, unit)} of what was looked at, so within ${off}% of the best`;
}
