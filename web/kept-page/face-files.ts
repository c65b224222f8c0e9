import { FACES, type FaceName } from '../../calc/sheets/pdf/kit/scripts/faces.ts';

/** Addresses of the typefaces of other scripts. */
const SCRIPTS = import.meta.glob<string>('../../calc/sheets/fonts/scripts/*.woff', {
  query: '?url',
  import: 'default',
  eager: true,
});

const CACHE = 'overrow-typefaces';

/** A typeface of another script: as it is kept, else from beside the page, and then it is kept. Null where it does not come. */
export async function faceFile(name: FaceName): Promise<Uint8Array | null> {
  const store = await keptFaces();
  const kept = await store?.match(addressOf(name));
  if (kept) return new Uint8Array(await kept.arrayBuffer());
  const answer = await fetch(addressOf(name)).catch(() => null);
  if (!answer?.ok) return null;
  // Where the store is full or refuses, the sheet is written all the same.
  await store?.put(addressOf(name), answer.clone()).catch(() => undefined);
  return new Uint8Array(await answer.arrayBuffer());
}

/** Has typefaces kept; those that could not be had. */
export async function keepFaces(names: readonly FaceName[]): Promise<readonly FaceName[]> {
  const store = await keptFaces();
  const absent: FaceName[] = [];
  for (const name of names) {
    if (await store?.match(addressOf(name))) continue;
    if ((await faceFile(name)) === null) absent.push(name);
  }
  return absent;
}

/** Typefaces of an older version of the page go. */
export async function dropOldFaces(): Promise<void> {
  const store = await keptFaces();
  const used = new Set(FACES.map(addressOf));
  for (const { url } of (await store?.keys()) ?? []) if (!used.has(url)) await store?.delete(url);
}

const addressOf = (name: FaceName): string =>
  new URL(SCRIPTS[`../../calc/sheets/fonts/scripts/${name}.woff`]!, self.location.href).href;

/** No browser keeps files for a page that came without encryption, and some refuse. */
const keptFaces = (): Promise<Cache | undefined> =>
  'caches' in self ? caches.open(CACHE).catch(() => undefined) : Promise.resolve(undefined);
