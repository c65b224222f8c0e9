import type { UnderlayKind } from '../../../routing/site/schema/vocabulary.ts';
import { xmlRoot } from './xml-root.ts';

/** The files that a person can pick, for the file dialog; for one that is not read the page says what to save it as. */
export const UNDERLAY_EXTENSIONS = [
  '.png',
  '.jpg',
  '.jpeg',
  '.pdf',
  '.dxf',
  '.svg',
  '.geojson',
  '.json',
  '.dwg',
  '.tif',
  '.tiff',
] as const;

/** So much of a file is looked at: a drawing may begin with a licence or a log as its comments. */
export const HEAD_BYTES = 65_536;

const startsWith = (bytes: Uint8Array, ...signs: readonly number[]): boolean =>
  signs.every((sign, i) => bytes[i] === sign);

/** The kind of a file by its own first bytes, whatever its name; null where it is none that can lie under a drawing. */
export function fileKind(bytes: Uint8Array): UnderlayKind | null {
  if (startsWith(bytes, 0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return 'png';
  if (startsWith(bytes, 0xff, 0xd8, 0xff)) return 'jpeg';
  const head = latin1(bytes, HEAD_BYTES).replace(/^\u00ef\u00bb\u00bf/, '');
  // The mark of a PDF may stand a little way in (ISO 32000, annex H.3.4.1).
  if (head.slice(0, 1024).includes('%PDF-')) return 'pdf';
  if (/^([\w.-]+:)?svg$/i.test(xmlRoot(head) ?? '')) return 'svg';
  if (/^\s*[{[]/.test(head)) return 'geojson';
  return beginsDxf(head) ? 'dxf' : null;
}

/** So many bytes as letters, whatever they are. */
export const latin1 = (bytes: Uint8Array, end: number): string =>
  new TextDecoder('latin1').decode(bytes.subarray(0, end));

/** Whether the first group that is no comment (999) begins a section. A group is two lines: its code and its value. */
function beginsDxf(head: string): boolean {
  const lines = head.split('\n').map((line) => line.trim());
  const said = (from: number): number => {
    let at = from;
    while (lines[at] === '') at += 1;
    return at;
  };
  let at = said(0);
  while (lines[at] === '999') at = said(at + 2);
  return lines[at] === '0' && (lines[said(at + 1)] ?? '').startsWith('SECTION');
}

/** Whether a file is a site file and not an underlay: both may be JSON. */
export const looksLikeSite = (bytes: Uint8Array): boolean => latin1(bytes, 4096).includes('overrow/site');

/** Whether the beginning of a JSON file tells of things on the ground and not of a site. */
export const looksLikeGround = (bytes: Uint8Array): boolean =>
  !looksLikeSite(bytes) &&
  /"type"\s*:\s*"(Feature|FeatureCollection|Topology|(Multi)?(Point|LineString|Polygon)|GeometryCollection)"|"(geometryType|spatialReference)"\s*:/.test(
    latin1(bytes, HEAD_BYTES),
  );
