import { tidy } from '../../../../routing/site/file/tidy.ts';
import type { Motion } from '../../../../routing/site/place/motion.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import type { EditStep } from '../../change/edit.ts';
import { setStep } from '../../change/set-field.ts';
import { alike } from '../gather.ts';

type Gridlines = NonNullable<SiteFile['gridlines']>;
type Lines = NonNullable<Gridlines['x']>;

/** The step by which gridlines go with their lot. */
export function gridlineSteps(file: SiteFile, motion: Motion): readonly EditStep[] {
  const { gridlines } = file;
  if (!gridlines || (gridlines.x?.length ?? 0) + (gridlines.y?.length ?? 0) === 0) return [];
  const after = movedGridlines(gridlines, motion);
  return alike(gridlines, after) ? [] : [setStep(file, 'gridlines', after)];
}

/**
 * Gridlines after a motion, in the file's units. Lines that turn by an eighth of a turn or more change axes, so that what
 * ran up the sheet runs across it; those that come to lie square to the axes are measured from the site's origin again.
 */
function movedGridlines(gridlines: Gridlines, motion: Motion): Gridlines {
  const { rotation = 0, origin = [0, 0] } = gridlines;
  const turned = motion.direction(rotation);
  const middle = motion.point(origin);
  if (!motion.mirrors && motion.direction(0) === 0)
    return gridlines.rotation === undefined && gridlines.origin === undefined
      ? withLines(gridlines, shifted(gridlines.x, middle[0]), shifted(gridlines.y, middle[1]))
      : { ...gridlines, origin: middle };
  let [x, y] = [gridlines.x, motion.mirrors ? reversed(gridlines.y) : gridlines.y];
  const quarters = Math.round(turned / 90);
  for (let i = 0; i < quarters; i++) [x, y] = [reversed(y), x];
  const left = tidy(turned - quarters * 90);
  return left === 0
    ? withLines({}, shifted(x, middle[0]), shifted(y, middle[1]))
    : { ...withLines({}, x, y), rotation: left, origin: middle };
}

const withLines = (gridlines: Gridlines, x: Lines | undefined, y: Lines | undefined): Gridlines => ({
  ...gridlines,
  ...(x && { x }),
  ...(y && { y }),
});

const shifted = (lines: Lines | undefined, by: number): Lines | undefined =>
  lines?.map((line) => ({ ...line, at: tidy(line.at + by) }));

const reversed = (lines: Lines | undefined): Lines | undefined =>
  lines?.map((line) => ({ ...line, at: -line.at + 0 })).reverse();
