import type { PDFDocument, PDFRef } from '@cantoo/pdf-lib';
import { addressOf, registersOf } from '../../../../routing/site/records/registers.ts';
import type { Mark, Site } from '../../../../routing/site/site.ts';
import { counted } from '../../../../routing/words/counted.ts';
import type { SetPhoto } from '../kit/work-record.ts';

/** Most photos that one set prints. */
export const MOST_PHOTOS = 400;

/** Gives the bytes of a photo by its hash (JPEG), null where they are not there. */
export type PhotoBytes = (hash: string) => Promise<Uint8Array | null>;

/** Marks of photos that stand, by what they are of. */
export const photoMarks = (site: Pick<Site, 'records'>): readonly Mark[] =>
  [...registersOf(site.records).values()]
    .flatMap(({ what, now }) => (what === 'photo' && now?.photo ? [now] : []))
    .sort((a, b) => (a.of < b.of ? -1 : a.of > b.of ? 1 : a.time - b.time));

/** Puts the photos of a lot into a document, each once; of those that are not there, or no picture, it is said. */
export async function embedPhotos(
  doc: PDFDocument,
  site: Pick<Site, 'records'>,
  bytesOf: PhotoBytes,
): Promise<{ readonly photos: readonly SetPhoto[]; readonly remarks: readonly string[] }> {
  const marks = photoMarks(site);
  const registers = registersOf(site.records);
  const refs = new Map<string, PDFRef | null>();
  const photos: SetPhoto[] = [];
  for (const { of, by, on = '', photo } of marks.slice(0, MOST_PHOTOS)) {
    const { hash, width, height } = photo!;
    if (!refs.has(hash)) refs.set(hash, await embedded(doc, await bytesOf(hash)));
    const ref = refs.get(hash);
    const note = registers.get(addressOf({ of, what: 'note' }))?.now?.text ?? '';
    if (ref) photos.push({ of, by, on, note, width, height, ref });
  }
  const missing = Math.min(marks.length, MOST_PHOTOS) - photos.length;
  return {
    photos,
    remarks: [
      ...(missing > 0
        ? [
            `${counted(missing, 'photo')} of the records ${missing === 1 ? 'is' : 'are'} not here and ${missing === 1 ? 'is' : 'are'} left out.`,
          ]
        : []),
      ...(marks.length > MOST_PHOTOS ? [`Of ${marks.length} photos the first ${MOST_PHOTOS} are printed.`] : []),
    ],
  };
}

async function embedded(doc: PDFDocument, bytes: Uint8Array | null): Promise<PDFRef | null> {
  if (bytes === null) return null;
  try {
    const image = await doc.embedJpg(bytes);
    await image.embed();
    return image.ref;
  } catch {
    return null;
  }
}
