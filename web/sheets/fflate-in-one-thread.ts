import { type AsyncZipOptions, type AsyncZippable, type FlateCallback, type Zippable, zipSync } from 'fflate/browser';

/**
 * What the built page has in place of `fflate`: its `zip` would start workers from blobs, which the content policy
 * forbids, and would then wait for them for ever. Sheets are written in a worker already.
 */
export * from 'fflate/browser';

export function zip(files: AsyncZippable, options: AsyncZipOptions | FlateCallback, done?: FlateCallback): () => void {
  const answer = typeof options === 'function' ? options : done!;
  answer(null, zipSync(files as Zippable));
  return () => undefined;
}
