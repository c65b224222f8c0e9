import { isPlainGrid, onGrid } from './grid-frame.ts';
import type { AsBuilt, Point2, Point3, Site } from './site.ts';

/** Where a site lies when it is laid along its gridlines: places and directions of the site on its gridlines. */
export interface GridGround {
  readonly place: (at: Point2) => Point2;
  readonly spot: (at: Point3) => Point3;
  readonly heading: (degrees: number) => number;
}

export function gridGround(gridlines: Site['gridlines']): GridGround {
  const place = (at: Point2): Point2 => onGrid(gridlines, at);
  return {
    place,
    spot: ([x, y, z]) => [...place([x, y]), z],
    heading: (degrees) => degrees - (gridlines.rotation ?? 0),
  };
}

/**
 * The same site laid along its gridlines: turned and moved as a whole, so that they lie square to its axes and are
 * measured from its origin. What is measured within it, and from the gridlines, stays. The site itself where its
 * gridlines lie so already.
 */
export function siteOnGrid(site: Site): Site {
  if (isPlainGrid(site.gridlines) || site.gridlines.x.length + site.gridlines.y.length === 0) return site;
  const { place, spot, heading } = gridGround(site.gridlines);
  const outlined = <T extends { readonly outline: readonly Point2[] }>(one: T): T => ({
    ...one,
    outline: one.outline.map(place),
  });
  const { underlay: _, underlays: __, ...rest } = site;
  return {
    ...rest,
    gridlines: { x: site.gridlines.x, y: site.gridlines.y },
    stalls: site.stalls.map((stall) => ({ ...stall, at: place(stall.at), heading: heading(stall.heading) })),
    columns: site.columns.map((one) => ({ ...one, at: place(one.at), rotation: heading(one.rotation ?? 0) })),
    members: site.members.map((member) => ({ ...member, from: spot(member.from), to: spot(member.to) })),
    keepouts: site.keepouts.map(outlined),
    aisles: site.aisles.map(outlined),
    equipment: site.equipment.map((one) => ({
      ...one,
      at: place(one.at),
      rotation: heading(one.rotation ?? 0),
      entry: spot(one.entry),
    })),
    raceways: site.raceways.map((raceway) => ({ ...raceway, path: raceway.path.map(spot) })),
    pullpoints: site.pullpoints.map((point) => ({ ...point, at: spot(point.at) })),
    drops: site.drops.map((drop) => ({
      ...drop,
      box: spot(drop.box),
      ...(drop.retractor && { retractor: spot(drop.retractor) }),
    })),
    asBuilt: new Map([...site.asBuilt].map(([drop, found]) => [drop, builtOnGrid(found, spot)])),
    // Bearings run clockwise, turns counter-clockwise.
    ...(site.georef && { georef: { ...site.georef, bearing: site.georef.bearing - (site.gridlines.rotation ?? 0) } }),
  };
}

const builtOnGrid = (found: AsBuilt, spot: GridGround['spot']): AsBuilt => ({
  ...found,
  ...(found.box && { box: spot(found.box) }),
  ...(found.retractor && { retractor: spot(found.retractor) }),
});
