import type * as v from 'valibot';
import { boxOf } from '../../plane/box.ts';
import type { PlacedKind } from '../kinds/kind.ts';
import { KINDS, PLACED_LISTS, type PlacedList } from '../kinds/kinds.ts';
import { broughtUp } from '../records/brought-up.ts';
import type { AsBuilt, Drawings, Mark, Point2, Point3, Site } from '../site.ts';
import { isPlainGrid, onGrid } from './grid-frame.ts';
import type { Motion } from './motion.ts';

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
  const { gridlines } = site;
  if (isPlainGrid(gridlines) || gridlines.x.length + gridlines.y.length === 0) return site;
  return laidOn(site, gridlines);
}

/**
 * A site that lies as its gridlines do, turned a quarter clockwise as a whole: what ran up runs to the right, and the
 * gridlines of its y are those of its x.
 */
export function siteTurned(site: Site): Site {
  const { x, y } = site.gridlines;
  // A quarter turn takes what lies at x to -x of the new y.
  const turned = { ...QUARTER, x: y, y: x.map((line) => ({ ...line, at: -line.at })).reverse() };
  return laidOn(site, turned);
}

/** The frame that turns a site as `siteTurned` does. */
export const QUARTER = { rotation: 90, origin: [0, 0] as Point2 };

/** A site with other gridlines, laid along them. */
function laidOn(site: Site, gridlines: Site['gridlines']): Site {
  const { place, spot, heading } = gridGround(gridlines);
  const { underlay: _, underlays: __, ...rest } = site;
  return {
    ...rest,
    gridlines: { x: gridlines.x, y: gridlines.y },
    drawings: drawingsOnGrid(site.drawings, place),
    ...placedOnGrid(site, { point: place, direction: heading, lift: 0, mirrors: false }),
    asBuilt: new Map([...site.asBuilt].map(([drop, found]) => [drop, builtOnGrid(found, spot)])),
    records: broughtUp(site.records).map((mark) => markOnGrid(mark, spot)),
    // Bearings run clockwise, turns counter-clockwise.
    ...(site.georef && { georef: { ...site.georef, bearing: site.georef.bearing - (gridlines.rotation ?? 0) } }),
  };
}

/** Areas stay rectangles along the gridlines: those round what was chosen. */
function drawingsOnGrid(drawings: Drawings, place: GridGround['place']): Drawings {
  if (drawings.areas === undefined) return drawings;
  const areas = drawings.areas.map(({ name, from, to }) => {
    const corners = [from, to, [from[0], to[1]], [to[0], from[1]]].map((corner) => place(corner as Point2));
    const { minX, minY, maxX, maxY } = boxOf(corners);
    return { name, from: [minX, minY] as [number, number], to: [maxX, maxY] as [number, number] };
  });
  return { ...drawings, areas };
}

const builtOnGrid = (found: AsBuilt, spot: GridGround['spot']): AsBuilt => ({
  ...found,
  ...(found.box && { box: spot(found.box) }),
  ...(found.retractor && { retractor: spot(found.retractor) }),
});

const markOnGrid = (mark: Mark, spot: GridGround['spot']): Mark => ({
  ...mark,
  ...(mark.place && { place: spot(mark.place) }),
  ...(mark.line && { line: { ...mark.line, at: spot(mark.line.at) } }),
});

const placedOnGrid = (site: Site, motion: Motion): Pick<Site, PlacedList> =>
  Object.fromEntries(
    PLACED_LISTS.map((list) => {
      const { moved } = KINDS[list] as unknown as PlacedKind<v.GenericSchema>;
      return [list, site[list].map((element) => moved(element, motion))];
    }),
  ) as unknown as Pick<Site, PlacedList>;
