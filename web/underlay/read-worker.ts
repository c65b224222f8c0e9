import { readDxf } from '../../routing/site/import/dxf.ts';
import { readGeojson } from '../../routing/site/import/geojson.ts';
import { linesOfGeojson, middleOfGeojson } from '../../routing/site/import/geojson-lines.ts';
import { packedLines } from './packed-lines.ts';
import type { ReadAnswer, ReadRequest } from './read-request.ts';

/** Reads a drawing away from the page, which ends this worker when it takes too long. */
const here = self as unknown as DedicatedWorkerGlobalScope;
here.onmessage = ({ data }: MessageEvent<ReadRequest>) => {
  const answer = data.kind === 'dxf' ? dxf(data.text) : geojson(data.text);
  const { lines } = answer.ok ? answer : { lines: null };
  here.postMessage(
    answer,
    lines ? [lines.layerOf, lines.starts, lines.closed, lines.xy].map(({ buffer }) => buffer) : [],
  );
};

function dxf(text: string): ReadAnswer {
  const read = readDxf(text);
  if (!read.ok) return read;
  const { lines, words, feetPerUnit, skipped } = read.value;
  return { ok: true, lines: packedLines(lines), words, feetPerUnit, skipped };
}

function geojson(text: string): ReadAnswer {
  const read = readGeojson(text);
  if (!read.ok) return read;
  const middle = middleOfGeojson(read.value.features);
  if (!middle) return { ok: false, fault: { place: 'the file', says: 'holds nothing that has a place' } };
  const holes = read.value.features.reduce((sum, feature) => sum + feature.holes, 0);
  const lines = linesOfGeojson(read.value.features, { lon: middle[0], lat: middle[1], bearing: 0 });
  return {
    ok: true,
    lines: packedLines(lines),
    words: [],
    feetPerUnit: 1,
    skipped: new Map(holes > 0 ? [['inner rings', holes]] : []),
    features: read.value.features,
    georef: read.value.georef,
    ground: middle,
  };
}
