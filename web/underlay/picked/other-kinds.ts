import { HEAD_BYTES, latin1 } from './file-kind.ts';
import { xmlRoot } from './xml-root.ts';

/** Kinds by their first bytes, with what to save them as. */
const OTHERS: readonly (readonly [signs: RegExp, says: string])[] = [
  [/^(AC10\d\d|AC1\.\d|AC2\.\d|MC0\.0)/, 'is a DWG: save it as a text DXF'],
  [/^.{4,16} Binary DXF\r\n/, 'is a binary DXF: save it as a text DXF'],
  [/^(II\*\0|MM\0\*|II\+\0|MM\0\+)/, 'is a TIFF: save it as a PNG'],
  [/^GIF8/, 'is a GIF: save it as a PNG'],
  [/^BM.{4}\0\0\0\0/s, 'is a BMP: save it as a PNG'],
  [/^RIFF.{4}WEBP/s, 'is a WebP: save it as a PNG'],
  [/^.{4}ftyp(heic|heix|mif1|avif)/s, 'is a HEIC or AVIF: save it as a JPEG'],
  [/^\0\0\0\fJXL |^\0\0\0\fjP {2}/, 'is a JPEG of a newer kind: save it as a JPEG or PNG'],
  [/^\0\0'\n/, 'is a shapefile: save it as GeoJSON in WGS 84'],
  [/^ISO-10303-21/, 'is an IFC or STEP model: save a plan of it as a DXF or PDF'],
  [/^\xd0\xcf..\xa1\xb1/s, 'is an older office file or a model: save a plan of it as a PDF or DXF'],
  [/^PK.{28}(doc|.*\.kml)/s, 'is a KMZ: save it as GeoJSON'],
  [/^PK[^ -~]/, 'is a ZIP: unpack it and pick what is in it'],
];
const ROOTS: Readonly<Record<string, string>> = {
  kml: 'is a KML: save it as GeoJSON',
  gpx: 'is a GPX: save it as GeoJSON',
  osm: 'is a raw extract of an open map: save it as GeoJSON',
  landxml: 'is a LandXML: save it as a text DXF',
  html: 'is a page of the web: save it as a PDF',
};

/** What a file is that cannot lie under a drawing, with the cure; a list of what can where it is not known. */
export function otherKind(bytes: Uint8Array): string {
  const head = latin1(bytes, 512);
  const known = OTHERS.find(([signs]) => signs.test(head));
  if (known) return known[1];
  const root = (xmlRoot(latin1(bytes, HEAD_BYTES)) ?? '').toLowerCase().replace(/^.*:/, '');
  if (ROOTS[root]) return ROOTS[root];
  if (bytes.length === 0) return 'is empty';
  return 'is no PNG, JPEG, PDF, SVG, DXF or GeoJSON';
}
