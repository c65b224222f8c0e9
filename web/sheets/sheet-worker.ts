import regular from '../../calc/sheets/fonts/overpass-regular.ttf?url';
import semibold from '../../calc/sheets/fonts/overpass-semibold.ttf?url';
import type { FontBytes } from '../../calc/sheets/pdf/kit/lettering/lettering.ts';
import { faceFile } from '../kept-page/face-files.ts';
import type { SheetNews, SheetRequest } from './sheet-request.ts';
import { writeRequest } from './write-sheets.ts';

/** Writes sheets away from the page, which ends this worker when it is told to stop. */
const here = self as unknown as DedicatedWorkerGlobalScope;
const post = (news: SheetNews): void => here.postMessage(news);

here.onmessage = async ({ data }: MessageEvent<SheetRequest>) => {
  try {
    const content = await writeRequest(data, servedFonts, post);
    const handed = content instanceof Uint8Array ? [content.buffer] : [];
    here.postMessage({ kind: 'done', content } satisfies SheetNews, handed);
  } catch (error) {
    post({ kind: 'failed', says: error instanceof Error ? error.message : String(error) });
  }
};

/** The typeface of the drawing set, from beside the page; those of other scripts where a name needs one. */
async function servedFonts(): Promise<FontBytes> {
  const [plain, bold] = await Promise.all([regular, semibold].map(bytesAt));
  return { regular: plain!, bold: bold!, scripts: faceFile };
}

async function bytesAt(url: string): Promise<Uint8Array> {
  const answer = await fetch(url);
  if (!answer.ok) throw new Error(`a typeface of the sheets did not come (${answer.status})`);
  return new Uint8Array(await answer.arrayBuffer());
}
