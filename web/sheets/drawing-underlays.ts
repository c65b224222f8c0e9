import type { Underlay as Laid } from '../../calc/sheets/pdf/kit/underlay.ts';
import type { Site, Underlay } from '../../routing/site/site.ts';
import { MAX_SIDE } from '../underlay/painting/picture.ts';
import { keptBytes } from '../underlay/picked/kept-bytes.ts';
import { onSite } from '../underlay/placing/placement.ts';
import { readUnderlay } from '../underlay/reading/read-underlay.ts';
import { underlaysOf } from '../underlay/underlays.ts';

/**
 * What lies under the drawing, is shown and is to be printed, from the lowest up, for the drawing set: pages of PDF files as they are, all
 * else as the board paints it. Of a file that is not kept here, or that cannot be read, no bytes: the set says so.
 */
export function drawingUnderlays(site: Pick<Site, 'underlay' | 'underlays'>): Promise<readonly Laid[]> {
  return Promise.all(
    underlaysOf(site)
      .filter(({ hidden, unprinted }) => !hidden && !unprinted)
      .map(laid),
  );
}

async function laid(underlay: Underlay): Promise<Laid> {
  const { file, kind, hash, page = 1, scale, rotation = 0, dim } = underlay;
  const bytes = (await keptBytes(hash, Date.now())) ?? new Uint8Array();
  const known = { file, ...(dim !== undefined && { dim }) };
  const placedFrom = (corner: readonly [number, number]) => {
    // The site says where `origin` lies; the set wants the lower left corner.
    const [x, y] = onSite(underlay, corner);
    return { x, y, scale, rotation };
  };
  if (kind === 'pdf') return { ...known, kind, bytes, page, placement: placedFrom([0, 0]) };
  const picture = await readUnderlay(kind, bytes, page).catch(() => null);
  const type = kind === 'jpeg' ? 'jpeg' : 'png';
  if (picture === null) return { ...known, kind: type, bytes, size: [1, 1], placement: placedFrom([0, 0]) };
  try {
    const { box } = picture;
    const size = [box.maxX - box.minX, box.maxY - box.minY] as const;
    const painted = await picture
      .render(box, MAX_SIDE / Math.max(...size), { ink: '#000000', dark: false })
      .then((image) => asFile(image, type))
      .catch(() => new Uint8Array());
    return { ...known, kind: type, bytes: painted, size, placement: placedFrom([box.minX, box.minY]) };
  } finally {
    picture.close();
  }
}

/** A painted picture as the bytes of a file; none where the browser has no room for it. */
async function asFile(image: CanvasImageSource, type: 'png' | 'jpeg'): Promise<Uint8Array> {
  if (!(image instanceof HTMLCanvasElement)) throw new TypeError('underlays are painted on canvases');
  const blob = await new Promise<Blob | null>((done) => image.toBlob(done, `image/${type}`, 0.9));
  return new Uint8Array((await blob?.arrayBuffer()) ?? []);
}
