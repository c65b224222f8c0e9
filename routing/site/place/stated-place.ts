import type { Georef, Point2 } from '../site.ts';

/** Where a sheet says that it lies on its site. */
export interface StatedPlace {
  /** Feet on the site in a unit of the file. */
  readonly feetPerUnit: number;
  /** The point of the file, in its own units and axes, that is the origin of the site. */
  readonly origin: Point2;
  /** Degrees counter-clockwise by which the file is turned to lie on the site. */
  readonly turned: number;
  /** Where the site lies on the ground. */
  readonly georef?: Georef;
}

/** The name of the words below in RDF: no address, nothing is fetched by it. */
const SPACE = 'urn:x-overrow:place';
/** Lengths of a site, feet, and of a file, units, stay within these. */
const MOST = 1e9;

/**
 * A place as RDF/XML, which the metadata of an SVG (SVG 1.1, 21) and the XMP of a PDF (ISO 16684-1) both take: any
 * program may read it.
 */
export function placeRdf({ feetPerUnit, origin, turned, georef }: StatedPlace): string {
  const values: readonly (readonly [string, number])[] = [
    ['feetPerUnit', feetPerUnit],
    ['originX', origin[0]],
    ['originY', origin[1]],
    ['turned', turned],
    ...(georef
      ? ([
          ['latitude', georef.lat],
          ['longitude', georef.lon],
          ['bearing', georef.bearing],
        ] as const)
      : []),
  ];
  const said = values.map(([name, value]) => `place:${name}="${Number(value.toPrecision(15))}"`).join(' ');
  return `<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description xmlns:place="${SPACE}" rdf:about="" ${said}/></rdf:RDF>`;
}

/** The place that the metadata of a file states; null where they state none, or none that can be. */
export function placeInRdf(text: string): StatedPlace | null {
  const at = text.indexOf(`"${SPACE}"`);
  const from = at < 0 ? -1 : text.lastIndexOf('<', at);
  if (from < 0) return null;
  const tag = text.slice(from, from + 4096);
  const prefix = /xmlns:([\w.-]+)\s*=\s*"urn:x-overrow:place"/.exec(tag)?.[1];
  if (prefix === undefined) return null;
  const said = (name: string): number => {
    const found = new RegExp(`\\s${prefix.replaceAll('.', '\\.')}:${name}\\s*=\\s*"([-+.\\deE]{1,32})"`).exec(tag)?.[1];
    return found === undefined ? Number.NaN : Number(found);
  };
  const [feetPerUnit, x, y, turned] = [said('feetPerUnit'), said('originX'), said('originY'), said('turned')];
  const sound = feetPerUnit > 1 / MOST && feetPerUnit < MOST && [x, y, turned].every((one) => Math.abs(one) < MOST);
  if (!sound) return null;
  const [lat, lon, bearing] = [said('latitude'), said('longitude'), said('bearing')];
  const onGround = Math.abs(lat) <= 90 && Math.abs(lon) <= 180 && Math.abs(bearing) < MOST;
  return { feetPerUnit, origin: [x, y], turned, ...(onGround && { georef: { lon, lat, bearing } }) };
}
