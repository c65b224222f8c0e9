import { counted } from '../../../routing/words/counted.ts';
import { orderByLook, paintLines } from '../painting/paint-lines.ts';
import { type ReadingTold, UnderlayFault, type UnderlayPicture } from '../painting/picture.ts';
import { linesPerLayer } from './packed-lines.ts';
import type { ReadAnswer, ReadMessage, ReadRequest } from './read-request.ts';

/** Longest that a drawing may take to be read, milliseconds; how far it is is told, and it can be stopped. */
const READ_MS = 120_000;
/** Feet: a site plan is hardly smaller, nor larger. */
const SMALL = 10;
const LARGE = 3 * 5280;

/** Reads a DXF or a GeoJSON in a worker of its own. */
export async function readLines(
  kind: 'dxf' | 'geojson',
  bytes: Uint8Array,
  reading: ReadingTold = {},
): Promise<UnderlayPicture> {
  const answer = await answerOf({ kind, bytes }, reading);
  if (!answer.ok) throw new UnderlayFault(`${answer.fault.place} ${answer.fault.says}`);
  const { lines, words, extent, feetPerUnit, rounding, features, ground, georef } = answer;
  const order = orderByLook(lines);
  return {
    box: extent.main,
    ...(extent.strays > 0 && { extent: extent.whole }),
    feetPerUnit,
    rounding,
    lines,
    words,
    ...(features && { features }),
    ...(ground && { ground }),
    ...(georef && { georef }),
    notes: notesOf(answer),
    render: (part, perUnit, colors) => paintLines(lines, order, words, part, perUnit, colors),
    close: () => {},
  };
}

function answerOf(request: ReadRequest, { tell, signal }: ReadingTold): Promise<ReadAnswer> {
  const worker = new Worker(new URL('./read-worker.ts', import.meta.url), { type: 'module' });
  return new Promise<ReadAnswer>((resolve, reject) => {
    const late = setTimeout(
      () => reject(new UnderlayFault(`it takes longer than ${READ_MS / 1000} seconds to read`)),
      READ_MS,
    );
    signal?.addEventListener('abort', () => reject(new UnderlayFault('it was stopped')), { once: true });
    if (signal?.aborted) reject(new UnderlayFault('it was stopped'));
    worker.onmessage = ({ data }: MessageEvent<ReadMessage>) => {
      if ('share' in data) {
        tell?.(data.share);
        return;
      }
      clearTimeout(late);
      resolve(data.answer);
    };
    worker.onerror = () => {
      clearTimeout(late);
      reject(new UnderlayFault('it is more than this browser can read'));
    };
    worker.postMessage(request);
  }).finally(() => worker.terminate());
}

const inFeet = (feet: number): string => (feet < 20 ? feet.toFixed(1) : Math.round(feet).toLocaleString('en-US'));

function notesOf({
  lines,
  words,
  extent,
  feetPerUnit,
  unitSays,
  notes,
}: Extract<ReadAnswer, { ok: true }>): readonly string[] {
  const { main, strays, farthest } = extent;
  const [width, height] = [main.maxX - main.minX, main.maxY - main.minY];
  const layers = linesPerLayer(lines).length;
  const drawn = `${lines.closed.length.toLocaleString('en-US')} ${lines.closed.length === 1 ? 'line' : 'lines'} on ${counted(layers, 'layer')}${words.length > 0 ? `, ${words.length.toLocaleString('en-US')} ${words.length === 1 ? 'line' : 'lines'} of words` : ''}.`;
  const feet = feetPerUnit ?? 1;
  const far = feetPerUnit === null ? `${inFeet(farthest)} units` : `${inFeet(farthest * feet)} ft`;
  return [
    drawn,
    ...(unitSays === null ? [] : unitNotes(unitSays, width, height, feetPerUnit)),
    ...(strays > 0
      ? [
          `${strays === 1 ? '1 thing lies' : `${strays.toLocaleString('en-US')} things lie`} far outside, ${far} off: the view leaves ${strays === 1 ? 'it' : 'them'} aside.`,
        ]
      : []),
    ...notes,
  ];
}

function unitNotes(says: string, width: number, height: number, feetPerUnit: number | null): readonly string[] {
  const begun = `${says[0]!.toUpperCase()}${says.slice(1)}`;
  if (feetPerUnit === null)
    return [`${begun}: it is ${inFeet(width)} x ${inFeet(height)} of them. Choose its unit or set its scale.`];
  const [wide, high] = [width * feetPerUnit, height * feetPerUnit];
  const longest = Math.max(wide, high);
  const size = `${begun}: ${inFeet(wide)} x ${inFeet(high)} ft.`;
  if (longest < SMALL) return [size, 'That is small for a site: choose its unit if it is another.'];
  return longest > LARGE ? [size, 'That is large for a site: choose its unit if it is another.'] : [size];
}
