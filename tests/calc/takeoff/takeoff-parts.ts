import { expect } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import type { Plan } from '../../../calc/plan/plan-shape.ts';
import type { TakeoffRow } from '../../../calc/plan-file/takeoff.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';

export const planOf = (file: SiteFile): Plan => plan(toSite(file));

/** Quantity of the one row of an item and spec. */
export function quantity({ takeoff }: Plan, item: string, spec: string): number | undefined {
  const rows = takeoff.filter((row) => row.item === item && row.spec === spec);
  expect(rows.length).toBeLessThanOrEqual(1);
  return rows[0]?.quantity;
}

export const of = ({ takeoff }: Plan, item: string): readonly TakeoffRow[] =>
  takeoff.filter((row) => row.item === item);
