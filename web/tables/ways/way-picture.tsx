import { memo, useMemo } from 'react';
import { rectangleAt } from '../../../routing/plane/rectangle.ts';
import { stallRectangle } from '../../../routing/site/place/stall-rectangle.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { HEIGHT, inThumbnail, pathOf, type ThumbnailLine, WIDTH } from '../../board/painting/thumbnail.ts';

/** The plan of a way in a few lines: raceways in the ground dashed, pedestals as large dots, equipment as boxes. */
export const WayPicture = memo(function WayPicture({ file }: { readonly file: SiteFile }) {
  const lines = useMemo(() => linesOf(file), [file]);
  return (
    <svg className="way-plan" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
      <path className="way-stalls" d={lines.stalls} />
      <path className="way-steel" d={lines.steel} />
      <path className="way-buried" d={lines.buried} />
      <path className="way-raceways" d={lines.raceways} />
      <path className="way-drops" d={lines.drops} />
      <path className="way-pedestals" d={lines.pedestals} />
      <path className="way-gear" d={lines.gear} />
    </svg>
  );
});

function linesOf(file: SiteFile) {
  const site = toSite(file);
  const stalls = site.stalls.map((stall): ThumbnailLine => stallRectangle(stall));
  const steel = site.members.map(({ from, to }): ThumbnailLine => [from, to]);
  const raceways = (isBuried: boolean): readonly ThumbnailLine[] =>
    site.raceways.flatMap(({ path, place }) => ((place === 'underground') === isBuried ? [path] : []));
  const drops = (isPedestal: boolean): readonly ThumbnailLine[] =>
    site.drops.flatMap(({ box, mount }) => ((mount === 'pedestal') === isPedestal ? [[box]] : []));
  const gear = site.equipment.map(
    ({ at, size, rotation = 0 }): ThumbnailLine => rectangleAt(at, [size[0], size[1]], rotation),
  );
  const place = inThumbnail([...stalls, ...steel, ...raceways(true), ...raceways(false), ...gear].flat());
  return {
    stalls: pathOf(stalls, place, 'Z'),
    steel: pathOf(steel, place, ''),
    buried: pathOf(raceways(true), place, ''),
    raceways: pathOf(raceways(false), place, ''),
    // A line of no length with round ends is a dot.
    drops: pathOf(drops(false), place, 'h0'),
    pedestals: pathOf(drops(true), place, 'h0'),
    gear: pathOf(gear, place, 'Z'),
  };
}
