import regular from '../../calc/sheets/fonts/overpass-regular.ttf?url';
import semibold from '../../calc/sheets/fonts/overpass-semibold.ttf?url';
import type { FontBytes } from '../../calc/sheets/pdf/kit/lettering.ts';
import type { SheetNews, SheetRequest } from './sheet-request.ts';
import { writeSheets } from './write-sheets.ts';

/** Writes sheets away from the page, which ends this worker when it is told to stop. */
const here = self as unknown as DedicatedWorkerGlobalScope;
const post = (news: SheetNews): void => here.postMessage(news);

here.onmessage = async ({ data }: MessageEvent<SheetRequest>) => {
  try {
    const content = await writeSheets(data, servedFonts, post);
    const handed = content instanceof Uint8Array ? [content.buffer] : [];
    here.postMessage({ kind: 'done', content } satisfies SheetNews, handed);
  } catch (error) {
    post({ kind: 'failed', says: error instanceof Error ? error.message : String(error) });
  }
};

/** The typeface of the drawing set, from beside the page. */
async function servedFonts(): Promise<FontBytes> {
  const [plain, bold] = await Promise.all(
    [regular, semibold].map(async (url) => new Uint8Array(await (await fetch(url)).arrayBuffer())),
  );
  return { regular: plain!, bold: bold! };
}
