import { drawDxf } from '../../../routing/site/import/dxf.ts';
import { readGeojson } from '../../../routing/site/import/geojson.ts';
import { linesOfGeojson, middleOfGeojson } from '../../../routing/site/import/geojson-lines.ts';
import type { DrawnWords } from '../../../routing/site/import/imported.ts';
import { counted } from '../../../routing/words/counted.ts';
import { type MainExtent, mainExtent } from './main-extent.ts';
import { buffersOf, linePacker, type PackedLines, packedLines } from './packed-lines.ts';
import type { ReadAnswer, ReadMessage, ReadRequest } from './read-request.ts';
import { textOfBytes } from './text-of-bytes.ts';

/** Reads a drawing away from the page, which ends this worker when it takes too long. */
const here = self as unknown as DedicatedWorkerGlobalScope;
const say = (message: ReadMessage, passed: ArrayBufferLike[] = []): void =>
  here.postMessage(message, passed as Transferable[]);

here.onmessage = ({ data: { kind, bytes } }: MessageEvent<ReadRequest>) => {
  const text = textOfBytes(bytes);
  const answer = kind === 'dxf' ? dxf(text) : geojson(text);
  say({ answer }, answer.ok ? buffersOf(answer.lines) : []);
};

/** Of latitude (WGS 84, mean). */
const FEET_IN_A_DEGREE = 364_600;

function dxf(text: string): ReadAnswer {
  const packer = linePacker();
  const read = drawDxf(text, packer.put, (share) => say({ share }));
  if (!read.ok) return read;
  const { words, feetPerUnit, unitSays, rounding, notes } = read.value;
  const lines = packer.packed();
  return { ok: true, lines, words, extent: extentOf(lines, words), feetPerUnit, unitSays, rounding, notes };
}

function geojson(text: string): ReadAnswer {
  const read = readGeojson(text);
  if (!read.ok) return read;
  const middle = middleOfGeojson(read.value.features);
  if (!middle) return { ok: false, fault: { place: 'the file', says: 'holds nothing that has a place' } };
  const holes = read.value.features.reduce((sum, feature) => sum + feature.holes, 0);
  const lines = packedLines(linesOfGeojson(read.value.features, { lon: middle[0], lat: middle[1], bearing: 0 }));
  return {
    ok: true,
    lines,
    words: [],
    extent: extentOf(lines, []),
    feetPerUnit: 1,
    unitSays: null,
    notes: [...read.value.notes, ...(holes > 0 ? [`Not drawn: ${counted(holes, 'inner ring')}.`] : [])],
    rounding: read.value.rounding * FEET_IN_A_DEGREE,
    features: read.value.features,
    georef: read.value.georef,
    ground: middle,
  };
}

function extentOf({ boxes }: PackedLines, words: readonly DrawnWords[]): MainExtent {
  const all = new Float64Array(boxes.length + 4 * words.length);
  all.set(boxes);
  for (const [i, { at, height }] of words.entries())
    all.set([at[0] - height, at[1] - height, at[0] + height, at[1] + height], boxes.length + 4 * i);
  return mainExtent(all);
}
