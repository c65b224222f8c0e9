import { inert } from '../../calc/sheets/pdf/kit/lettering/inert.ts';
import { textsIn } from '../../calc/sheets/pdf/kit/lettering/texts-in.ts';
import { type FaceName, FETCHED_LATER, facesInOrder } from '../../calc/sheets/pdf/kit/scripts/faces.ts';
import { facesFor } from '../../calc/sheets/pdf/kit/scripts/pieces.ts';
import { faceHas } from '../../calc/sheets/pdf/kit/scripts/signs.ts';

const isLater: ReadonlySet<FaceName> = new Set(FETCHED_LATER);

/** The typefaces that a site's texts need of those that are fetched later, by themselves and on one line with one another. */
export function laterFaces(data: readonly unknown[]): readonly FaceName[] {
  const texts = textsIn(data, (code) => faceHas('set', code)).map(inert);
  const all = texts.join(' ');
  return facesFor([...texts, all], facesInOrder(all)).filter((name) => isLater.has(name));
}
