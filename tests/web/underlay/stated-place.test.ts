import { describe, expect, it } from 'vitest';
import { planDrawing } from '../../../calc/sheets/drawing/plan-drawing.ts';
import { svg } from '../../../calc/sheets/svg/svg.ts';
import { placeInRdf, placeRdf } from '../../../routing/site/place/stated-place.ts';
import type { Point2 } from '../../../routing/site/site.ts';
import { lieAsStated, liesAsStated } from '../../../web/underlay/placing/lie-as-stated.ts';
import { carriedOver, onSite } from '../../../web/underlay/placing/placement.ts';
import { svgPlace } from '../../../web/underlay/reading/svg-place.ts';
import { svgSize } from '../../../web/underlay/reading/svg-size.ts';
import { plannedSample } from '../../outside/sheets/planned-samples.ts';

const GROUND = { lon: -98.5, lat: 39.8, bearing: 12.5 };
const placed = plannedSample('library-lot', (file) => ({ ...file, georef: GROUND }));

/** The corners of the stalls of our own SVG, in units of the picture, y up. */
function stallCorners(text: string): readonly Point2[] {
  const { height } = svgSize(text)!;
  const group = /<g id="C-PKNG-STAL"[^>]*>([\s\S]*?)<\/g>/.exec(text)![1]!;
  return [...group.matchAll(/points="([^"]+)"/g)].flatMap(([, points = '']) =>
    points.split(' ').map((pair): Point2 => {
      const [x, y] = pair.split(',').map(Number);
      return [x!, height - y!];
    }),
  );
}

describe('an SVG of ours', () => {
  it('comes back in place and to scale, each stall where it was', () => {
    const { site, planned } = placed;
    const text = svg(planDrawing(site, planned), site);
    const { place, georef } = svgPlace(text, svgSize(text)!)!;
    expect(georef).toEqual(GROUND);
    const corners = stallCorners(text).map((corner) => onSite(place!, corner));
    expect(corners).toHaveLength(4 * site.stalls.length);
    for (const [i, stall] of site.stalls.entries()) {
      // `at` is the middle of the head of a stall: a stall's length and half its width from two corners each.
      const four = corners.slice(4 * i, 4 * i + 4);
      const off = four.map(([x, y]) => Math.hypot(x - stall.at[0], y - stall.at[1])).sort((a, b) => a - b);
      expect(off[0]).toBeCloseTo(stall.width / 2, 3);
      expect(off[1]).toBeCloseTo(stall.width / 2, 3);
      expect(off[3]).toBeCloseTo(Math.hypot(stall.width / 2, stall.depth), 3);
    }
  });

  it('does so when another program gave it another size on paper, and not when it is stretched', () => {
    const { site, planned } = placed;
    const text = svg(planDrawing(site, planned), site);
    const { width, height } = svgSize(text)!;
    const onPaper = text.replace(/width="[^"]*" height="[^"]*"/, `width="${width / 192}in" height="${height / 192}in"`);
    const small = svgSize(onPaper)!;
    const { place } = svgPlace(onPaper, small)!;
    const whole = svgPlace(text, svgSize(text)!)!.place!;
    for (const share of [0, 0.3, 1]) {
      const [a, b] = [
        onSite(place!, [share * small.width, share * small.height]),
        onSite(whole, [share * width, share * height]),
      ];
      expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeLessThan(1e-6);
    }
    const stretched = text.replace(/width="[^"]*" height/, `width="${width * 2}" height`);
    expect(svgPlace(stretched, svgSize(stretched)!)).toBeNull();
  });

  it('on a site that lies elsewhere on the ground it lies on its own ground', () => {
    const place = { at: [0, 0] as const, origin: [10, 20] as const, scale: 0.5, rotation: 0 };
    expect(carriedOver(place, GROUND, GROUND)).toEqual(place);
    expect(carriedOver(place, undefined, GROUND)).toEqual(place);
    // A site 100 ft to the true north of its origin, its +y to the true north: a foot of latitude is 1/364,000 of a degree.
    const north = { lon: -98.5, lat: 39.8 + 100 / 364_270, bearing: 0 };
    const lies = carriedOver(place, { ...GROUND, bearing: 90 }, north);
    expect(onSite(lies, [10, 20])[1]).toBeCloseTo(-100, 0);
    // What was +y of the file's site, to the east, is +x here.
    const up = onSite(lies, [10, 22]);
    expect(up[0] - onSite(lies, [10, 20])[0]).toBeCloseTo(1, 6);
  });
});

describe('a place in metadata', () => {
  const place = { feetPerUnit: 0.125, origin: [-3.25, 1e5 / 3] as const, turned: 12.75, georef: GROUND };
  it('is read as it was written, under any prefix', () => {
    expect(placeInRdf(placeRdf(place))).toEqual({ ...place, origin: [-3.25, 33333.3333333333] });
    const other = placeRdf(place).replaceAll('place:', 'p.0:').replace('xmlns:place', 'xmlns:p.0');
    expect(placeInRdf(other)?.turned).toBe(12.75);
  });
  it.each([
    ['nothing', ''],
    ['a name alone', '"urn:x-overrow:place"'],
    ['no number', placeRdf(place).replace('"0.125"', '"much"')],
    ['a scale of nothing', placeRdf(place).replace('"0.125"', '"0"')],
    ['a scale below nothing', placeRdf(place).replace('"0.125"', '"-1"')],
    ['a place past all bounds', placeRdf(place).replace('"-3.25"', '"1e300"')],
    ['a turn without end', placeRdf(place).replace('"12.75"', '"Infinity"')],
    ['a long run of letters', `<${'a:'.repeat(100_000)}"urn:x-overrow:place"`],
  ])('is none where it says %s', (_, text) => expect(placeInRdf(text)).toBeNull());
  it('leaves out a ground that is none', () =>
    expect(placeInRdf(placeRdf({ ...place, georef: { ...GROUND, lat: 95 } }))?.georef).toBeUndefined());
});

describe('an underlay laid as its sheet states', () => {
  const picture = { box: { minX: 0, minY: 0, maxX: 720, maxY: 360 }, perInch: 72 };
  const underlay = { at: [0, 0] as const, scale: 0.1, rotation: 30 };
  it('keeps its middle where only a scale is stated', () => {
    const lies = lieAsStated(underlay, { perInch: 72, statedFeet: 20 }, undefined, picture);
    expect(lies.scale).toBeCloseTo(20 / 72, 12);
    const [a, b] = [onSite(underlay, [360, 180]), onSite(lies, [360, 180])];
    expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeLessThan(1e-9);
    expect(lieAsStated(underlay, {}, undefined, picture)).toBe(underlay);
  });
  it('loses the turn of the page before, and is known to lie so', () => {
    const stated = { place: { at: [0, 0] as const, origin: [5, 5] as const, scale: 0.25 } };
    const lies = lieAsStated(underlay, stated, undefined, picture);
    expect(lies.rotation).toBe(0);
    const whole = { ...picture, ...stated } as unknown as Parameters<typeof liesAsStated>[1];
    expect(liesAsStated(lies, whole, undefined)).toBe(true);
    expect(liesAsStated({ ...lies, at: [0, 0.5] }, whole, undefined)).toBe(false);
  });
});
