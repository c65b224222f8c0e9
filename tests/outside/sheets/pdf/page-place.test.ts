import { PDFDocument } from '@cantoo/pdf-lib';
import { expect, test } from 'vitest';
import { offGrid } from '../../../../routing/site/place/grid-frame.ts';
import type { Gridline, Point2, SiteFile } from '../../../../routing/site/site.ts';
import { statedByPage } from '../../../../web/underlay/pdf-page/stated.ts';
import { onSite } from '../../../../web/underlay/placing/placement.ts';
import { plannedSample } from '../planned-samples.ts';
import { setOf } from './drawing-set.ts';
import { type PageText, readPdf } from './read-pdf.ts';

const GROUND = { lon: -98.5, lat: 39.8, bearing: 12.5 };
const turned = (file: SiteFile): SiteFile => ({
  ...file,
  georef: GROUND,
  gridlines: { ...file.gridlines, rotation: 20, origin: [3, -7] } as NonNullable<SiteFile['gridlines']>,
});

/**
 * Middles of the bubbles of a gridline on a sheet, along one axis, as pdf.js finds their letters: bubbles of an axis stand
 * in one row, the uppermost or that furthest left; keynotes bear the same figures elsewhere.
 */
function bubbles(
  texts: readonly PageText[],
  lines: readonly Pick<Gridline, 'label'>[],
  label: string,
  axis: 'x' | 'y',
) {
  const labels = new Set(lines.map((line) => line.label));
  const lettered = texts.filter(({ text, size }) => labels.has(text) && size > 9 && size < 12);
  const row = axis === 'x' ? Math.max(...lettered.map(({ y }) => y)) : Math.min(...lettered.map(middle));
  return lettered
    .filter((one) => one.text === label && Math.abs((axis === 'x' ? one.y : middle(one)) - row) < 1)
    .map((one) => (axis === 'x' ? middle(one) : one.y + 0.35 * one.size));
}
const middle = ({ x, width }: PageText): number => x + width / 2;

test.each([
  ['a lot placed on the ground, along turned gridlines', 'library-lot', turned, 20],
  ['a metric lot', 'library-lot', (file: SiteFile): SiteFile => ({ ...file, units: 'm' as const }), 0],
  ['a large lot on several sheets', 'fleet-yard', (file: SiteFile): SiteFile => file, 0],
])('each plan page states its place and scale: %s', async (_, sample, change, rotation) => {
  const planned = plannedSample(sample, change);
  const { site } = planned;
  const bytes = await setOf(planned);
  const refs = (await PDFDocument.load(bytes)).getPages().map(({ ref }) => ref.objectNumber);
  const read = await readPdf(bytes);
  let [plans, found] = [0, 0];
  for (const [i, { label, texts }] of read.pages.entries()) {
    const { place, feetPerUnit } = await statedByPage(bytes, refs[i]!);
    if (!/^E-[149]/.test(label)) {
      expect([place, feetPerUnit], label).toEqual([null, null]);
      continue;
    }
    plans += 1;
    const { origin, turned, georef } = place!;
    expect(georef).toEqual(site.georef);
    expect(turned).toBe(rotation);
    expect(place!.feetPerUnit).toBeCloseTo(feetPerUnit!, 9);
    const scale = feetPerUnit!;
    for (const x of site.gridlines.x)
      for (const y of site.gridlines.y)
        for (const px of bubbles(texts, site.gridlines.x, x.label, 'x'))
          for (const py of bubbles(texts, site.gridlines.y, y.label, 'y')) {
            const lies = onSite({ at: [0, 0], origin, scale, rotation: turned }, [px, py] as Point2);
            const wanted = offGrid(site.gridlines, [x.at, y.at]);
            // Letters are set to a twentieth of their size: half a point.
            const off = Math.hypot(lies[0] - wanted[0], lies[1] - wanted[1]) / scale;
            expect(off, `${label}: ${x.label} ${y.label}`).toBeLessThan(0.6);
            found += 1;
          }
  }
  expect(plans).toBeGreaterThan(1);
  expect(found).toBeGreaterThanOrEqual(site.gridlines.x.length * site.gridlines.y.length);
});

/** A PDF by hand, as another program would write it: nothing packed, its objects one after the other. */
const byHand = (page: string, ...others: readonly string[]): Uint8Array =>
  new TextEncoder().encode(
    ['%PDF-1.7', `3 0 obj\n<< /Type /Page ${page} >>\nendobj`, ...others, 'trailer << /Root 1 0 R >>', ''].join('\n'),
  );

test.each([
  ['feet', '/U (ft) /C 0.2777778', 0.2777778],
  ['inches', '/U (in) /C 4', 1 / 3],
  ['metres, in UTF-16', '/U <FEFF006D> /C 0.0352778', 0.0352778 / 0.3048],
  ['a unit that nobody knows', '/U (rods) /C 2', null],
  ['no number', '/U (ft) /C /Many', null],
  ['a scale of nothing', '/U (ft) /C 0', null],
])('the measure of another program is read: %s', async (_, format, feet) => {
  const page = `/VP [ << /Type /Viewport /BBox [0 0 10 10] /Measure << /X [<< /U (ft) /C 9 >>] >> >> 7 0 R ]`;
  const viewport = '7 0 obj << /BBox [0 0 1000 700] /Measure 8 0 R >> endobj';
  const measure = `8 0 obj % a note\n<< /Type /Measure /Subtype /RL /R (1 in = 20 ft \\(or so\\)) /X [ << ${format} >> ] >> endobj`;
  const { feetPerUnit, place } = await statedByPage(byHand(page, viewport, measure), 3);
  expect(place).toBeNull();
  if (feet === null) expect(feetPerUnit === null || feetPerUnit === 9).toBe(true);
  else expect(feetPerUnit).toBeCloseTo(feet, 6);
});

test('what refers to itself, is nested without end, or is packed past all bounds states nothing, at once', async () => {
  const bomb = new Uint8Array(
    await new Response(
      new Blob([new Uint8Array(12_000_000)]).stream().pipeThrough(new CompressionStream('deflate')),
    ).arrayBuffer(),
  );
  const packed = (type: string): string =>
    `9 0 obj << /Type /${type} /N 1 /First 4 /Filter /FlateDecode /Length ${bomb.length} >> stream\n${String.fromCharCode(...bomb)}\nendstream endobj`;
  const latin = (text: string): Uint8Array => Uint8Array.from(text, (sign) => sign.charCodeAt(0) & 0xff);
  for (const text of [
    `3 0 obj << /Type /Page /VP 3 0 R /Metadata 3 0 R >> endobj`,
    `3 0 obj 4 0 R endobj 4 0 obj 3 0 R endobj`,
    `3 0 obj << /Type /Page /VP ${'['.repeat(100_000)} >> endobj`,
    `3 0 obj << /Type /Page /VP ${'<< /A '.repeat(100_000)} >> endobj`,
    `3 0 obj << /Type /Page /VP (${'('.repeat(100_000)} >> endobj`,
    `3 0 obj << /Type /Page /Metadata 9 0 R >> endobj ${packed('Metadata')}`,
    `3 0 obj << /Type /Page /Metadata 9 0 R >> endobj ${packed('ObjStm')}`,
    `${'1 0 obj '.repeat(50_000)} 3 0 obj`,
    'obj',
  ])
    expect(await statedByPage(latin(text), 3), text.slice(0, 60)).toEqual({ feetPerUnit: null, place: null });
});
