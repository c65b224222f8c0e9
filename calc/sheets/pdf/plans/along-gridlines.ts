import { isPlainGrid, onGrid } from '../../../../routing/site/place/grid-frame.ts';
import { gridGround, siteOnGrid } from '../../../../routing/site/place/site-on-grid.ts';
import type { Site } from '../../../../routing/site/site.ts';
import type { Plan } from '../../../plan/plan-shape.ts';
import type { PlacedUnderlay } from '../kit/underlay.ts';

/** What a set draws in plan. */
export interface Laid {
  readonly site: Site;
  readonly plan: Plan;
  /** From the lowest up. */
  readonly underlays: readonly PlacedUnderlay[];
  /** What the cover says of it; none where the sheets lie as the site file does. */
  readonly remark: string | null;
}

/**
 * A site and its plan as they lie on the sheets: along the gridlines, so that setting-out runs square to the sheet. As
 * they are where the gridlines lie square to the axes of the site.
 */
export function alongGridlines(site: Site, plan: Plan, underlays: readonly PlacedUnderlay[]): Laid {
  const laid = siteOnGrid(site);
  if (laid === site) return { site, plan, underlays, remark: null };
  const { spot } = gridGround(site.gridlines);
  const pathed = <T extends { readonly path: Plan['runs'][number]['path'] }>(one: T): T => ({
    ...one,
    path: one.path.map(spot),
  });
  const { rotation = 0 } = site.gridlines;
  return {
    site: laid,
    plan: {
      ...plan,
      runs: plan.runs.map(pathed),
      conduits: plan.conduits.map(pathed),
      boxes: plan.boxes.map((box) => ({ ...box, at: spot(box.at) })),
      reach: plan.reach.map((one) => ({
        ...one,
        worst: {
          ...one.worst,
          path: one.worst.path.map((at) => onGrid(site.gridlines, at)),
          inletAt: spot(one.worst.inletAt),
        },
      })),
    },
    underlays: underlays.map((one) => ({ ...one, placement: placementOn(site.gridlines, one.placement) })),
    remark:
      rotation % 360 === 0
        ? null
        : `Plans are turned by ${Number((-rotation).toFixed(3))} degrees against the drawn site, so that gridlines lie square to the sheet.`,
  };
}

function placementOn(grid: Site['gridlines'], at: PlacedUnderlay['placement']): PlacedUnderlay['placement'] {
  if (isPlainGrid(grid)) return at;
  const [x, y] = onGrid(grid, [at.x, at.y]);
  return { ...at, x, y, rotation: at.rotation - (grid.rotation ?? 0) };
}
