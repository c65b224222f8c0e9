import { METRES_PER_FOOT } from '../../../routing/site/numbers/units.ts';
import { placeInRdf, type StatedPlace } from '../../../routing/site/place/stated-place.ts';
import { pdfObjects } from './objects.ts';
import { isDict, isList, nameOf, type PdfDict, type PdfValue } from './values.ts';

/** What a page states for programs of where it lies: lengths in its own user space. */
export interface StatedByPage {
  /** Feet for a unit, by the measure of its largest viewport. */
  readonly feetPerUnit: number | null;
  readonly place: StatedPlace | null;
}

const FEET: readonly (readonly [words: RegExp, feet: number])[] = [
  [/^(ft|feet|foot|'|\u2032|ft[-_ ]?in)$/i, 1],
  [/^(in|inch|inches|"|\u2033)$/i, 1 / 12],
  [/^(yd|yards?)$/i, 3],
  [/^(mi|miles?)$/i, 5280],
  [/^(m|met(er|re)s?)$/i, 1 / METRES_PER_FOOT],
  [/^(cm|centimet(er|re)s?)$/i, 0.01 / METRES_PER_FOOT],
  [/^(mm|millimet(er|re)s?)$/i, 0.001 / METRES_PER_FOOT],
  [/^(km|kilomet(er|re)s?)$/i, 1000 / METRES_PER_FOOT],
];
/** A place that differs from the measure by more than this is of a sheet that was scaled since. */
const AGREES = 1e-3;

/**
 * Scale and place that a page states: by the rectilinear measure of its viewports (ISO 32000-1, 12.9), and by a place in
 * its metadata. `page` is the number of its object.
 */
export async function statedByPage(bytes: Uint8Array, page: number): Promise<StatedByPage> {
  const { follow, stream } = await pdfObjects(bytes);
  const dict = follow({ ref: page });
  if (!isDict(dict) || nameOf(follow(dict.get('Type'))) !== 'Page') return { feetPerUnit: null, place: null };
  const viewports = follow(dict.get('VP'));
  let [feetPerUnit, largest]: [number | null, number] = [null, 0];
  for (const each of isList(viewports) ? viewports.slice(0, 100) : []) {
    const viewport = follow(each);
    const feet = isDict(viewport) ? measured(viewport, follow) : null;
    const size = isDict(viewport) ? sizeOf(follow(viewport.get('BBox')), follow) : 0;
    if (feet !== null && size > largest) [feetPerUnit, largest] = [feet, size];
  }
  const metadata = await stream(dict.get('Metadata'));
  const place = metadata === null ? null : placeInRdf(metadata);
  const agrees = place !== null && (feetPerUnit === null || Math.abs(place.feetPerUnit / feetPerUnit - 1) < AGREES);
  return { feetPerUnit, place: agrees ? place : null };
}

type Follow = (value: PdfValue | undefined) => PdfValue;

function measured(viewport: PdfDict, follow: Follow): number | null {
  const measure = follow(viewport.get('Measure'));
  if (!isDict(measure) || (nameOf(follow(measure.get('Subtype'))) ?? 'RL') !== 'RL') return null;
  const formats = follow(measure.get('X'));
  const format = isList(formats) ? follow(formats[0]) : null;
  if (!isDict(format)) return null;
  const [unit, times] = [follow(format.get('U')), follow(format.get('C'))];
  const words = typeof unit === 'object' && unit !== null && 'text' in unit ? unit.text.trim() : '';
  const feet = FEET.find(([known]) => known.test(words))?.[1];
  const value = typeof times === 'number' ? times * (feet ?? Number.NaN) : Number.NaN;
  return value > 0 && Number.isFinite(value) ? value : null;
}

function sizeOf(box: PdfValue, follow: Follow): number {
  const sides = isList(box) ? box.map(follow) : [];
  const [x0, y0, x1, y1] = sides.map((side) => (typeof side === 'number' ? side : Number.NaN));
  const size = Math.abs((x1! - x0!) * (y1! - y0!));
  return Number.isFinite(size) ? size : 0;
}
