import { kept } from '../../../../../routing/kept/kept.ts';
import { isPlainGrid, onGrid } from '../../../../../routing/site/place/grid-frame.ts';
import { gridGround, QUARTER, siteOnGrid, siteTurned } from '../../../../../routing/site/place/site-on-grid.ts';
import type { Site } from '../../../../../routing/site/site.ts';
import type { Plan } from '../../../../plan/plan-shape.ts';
import type { SheetFrame } from '../../kit/draft.ts';
import type { PlacedUnderlay } from '../../kit/underlay.ts';

/** What a set draws in plan. */
export interface LaidInPlan {
  readonly site: Site;
  readonly plan: Plan;
  /** From the lowest up. */
  readonly underlays: readonly PlacedUnderlay[];
  readonly frame: SheetFrame;
}

/**
 * A site and its plan as they lie on the sheets: along the gridlines, so that setting-out runs square to the sheet. As
 * they are where the gridlines lie square to the axes of the site.
 */
export function alongGridlines(site: Site, plan: Plan, underlays: readonly PlacedUnderlay[]): LaidInPlan {
  const laid = siteLaid(site);
  if (laid === site) return { site, plan, underlays, frame: null };
  return { site: laid, frame: site.gridlines, ...relaid(plan, underlays, site.gridlines) };
}

/** What is laid already, turned a quarter clockwise: for a lot that is taller than it is wide, on paper that is not. */
export function turnedOnSheet({ site, plan, underlays, frame }: LaidInPlan): LaidInPlan {
  return {
    site: turned(site),
    frame: { rotation: (frame?.rotation ?? 0) + 90, origin: frame?.origin ?? [0, 0] },
    ...relaid(plan, underlays, TURNED),
  };
}

/** What the cover says of how plans lie; null where they lie as the site file does. */
export function turnRemark(frame: SheetFrame): string | null {
  const by = (((frame?.rotation ?? 0) % 360) + 360) % 360;
  if (by === 0) return null;
  return `Plans are turned by ${Number((by > 180 ? 360 - by : -by).toFixed(3))} degrees against the drawn site, so that they lie square to the sheet and along it.`;
}

function relaid(
  plan: Plan,
  underlays: readonly PlacedUnderlay[],
  grid: Site['gridlines'],
): Pick<LaidInPlan, 'plan' | 'underlays'> {
  return {
    plan: planLaid(plan, grid),
    underlays: underlays.map((one) => ({ ...one, placement: placementOn(grid, one.placement) })),
  };
}

// Kept: both papers and the lettered plan are drawn of one, and what is found out of it for one is known for the others.
const siteLaid = kept(siteOnGrid);
const turned = kept(siteTurned);
const TURNED: Site['gridlines'] = { x: [], y: [], ...QUARTER };
const planLaid = kept((plan: Plan, grid: Site['gridlines']): Plan => {
  const { spot } = gridGround(grid);
  const pathed = <T extends { readonly path: Plan['runs'][number]['path'] }>(one: T): T => ({
    ...one,
    path: one.path.map(spot),
  });
  return {
    ...plan,
    runs: plan.runs.map(pathed),
    conduits: plan.conduits.map(pathed),
    boxes: plan.boxes.map((box) => ({ ...box, at: spot(box.at) })),
    reach: plan.reach.map((one) => ({
      ...one,
      worst: {
        ...one.worst,
        path: one.worst.path.map((at) => onGrid(grid, at)),
        inletAt: spot(one.worst.inletAt),
      },
    })),
  };
});

function placementOn(grid: Site['gridlines'], at: PlacedUnderlay['placement']): PlacedUnderlay['placement'] {
  if (isPlainGrid(grid)) return at;
  const [x, y] = onGrid(grid, [at.x, at.y]);
  return { ...at, x, y, rotation: at.rotation - (grid.rotation ?? 0) };
}
