import { type KerbRow, type KerbShape, rowsAlongKerb } from '../../../routing/propose/rows/rows-along-kerb.ts';
import type { GroundFeature } from '../../../routing/site/import/geojson.ts';
import type { OpenMap } from '../../../routing/site/import/open-map.ts';
import { newIds } from '../../../routing/site/new-id.ts';
import { siteOf } from '../../../routing/site/place/georef.ts';
import type { Point2, SiteFile, Underlay } from '../../../routing/site/site.ts';
import { counted } from '../../../routing/words/counted.ts';
import type { Edit } from '../../document/change/edit.ts';
import { addAll } from '../../document/edits/add.ts';
import { onSite } from '../placing/placement.ts';

/** An open map's lot as it lies on the site, feet. */
export interface LotOnSite {
  readonly rows: readonly KerbRow[];
  readonly buildings: readonly (readonly Point2[])[];
  readonly aisles: readonly (readonly Point2[])[];
}

/** Stalls of a first row, feet: square ones of 9 by 18 with an aisle of 24 (common practice, no source). */
const SHAPE: KerbShape = { width: 9, depth: 18, aisle: 24 };
/** Farther than this, feet, beyond the lots a map is of something else. */
const MOST_ROWS = 200;

/** Lots, aisles and buildings where the underlay lies, with a first row along each kerb. */
export function lotOnSite(map: OpenMap, underlay: Underlay, [lon, lat]: readonly [number, number]): LotOnSite {
  const placed = (feature: GroundFeature, kind: 'ring' | 'line'): readonly (readonly Point2[])[] =>
    feature.shapes
      .filter((shape) => shape.kind === kind)
      .map(({ points }) => points.map((at) => onSite(underlay, siteOf({ lon, lat, bearing: 0 }, at))));
  const buildings = map.buildings.flatMap((feature) => placed(feature, 'ring'));
  const rows = map.lots
    .flatMap((feature) => placed(feature, 'ring'))
    .flatMap((outline) => rowsAlongKerb(outline, SHAPE, buildings))
    .slice(0, MOST_ROWS);
  const aisles = map.aisles.flatMap((feature) => placed(feature, 'line')).flatMap(stripsOf);
  return { rows, buildings, aisles };
}

/** An aisle of its usual width along each piece of its middle line. */
function stripsOf(line: readonly Point2[]): readonly (readonly Point2[])[] {
  return line.slice(1).flatMap(([bx, by], i) => {
    const [ax, ay] = line[i]!;
    const length = Math.hypot(bx - ax, by - ay);
    if (length < 1) return [];
    const [nx, ny] = [((ay - by) / length) * (SHAPE.aisle / 2), ((bx - ax) / length) * (SHAPE.aisle / 2)];
    return [
      [
        [ax - nx, ay - ny],
        [bx - nx, by - ny],
        [bx + nx, by + ny],
        [ax + nx, ay + ny],
      ] as readonly Point2[],
    ];
  });
}

/** Draws rows along kerbs, as one edit. */
export function drawRows(file: SiteFile, rows: readonly KerbRow[]): Edit {
  const stalls = rows.flatMap((row) => row.stalls);
  const ids = newIds(file, 'S', stalls.length);
  return addAll(file, `Draw ${counted(stalls.length, 'stall')} along kerbs`, {
    stalls: stalls.map((stall, i) => ({ id: ids[i]!, ...stall })),
  });
}

/** Brings in aisles, and buildings as keep-outs, as one edit. */
export function bringInGround(file: SiteFile, { aisles, buildings }: LotOnSite): Edit {
  const [aisleIds, keepoutIds] = [newIds(file, 'A', aisles.length), newIds(file, 'KO', buildings.length)];
  return addAll(file, `Bring in ${counted(aisles.length, 'aisle')} and ${counted(buildings.length, 'building')}`, {
    aisles: aisles.map((outline, i) => ({ id: aisleIds[i]!, outline })),
    keepouts: buildings.map((outline, i) => ({
      id: keepoutIds[i]!,
      outline,
      blocks: ['raceway', 'drop', 'equipment'] as const,
    })),
  });
}
