/** Names that one system keeps for its devices, whatever ending follows. */
const DEVICE = /^(con|prn|aux|nul|com[0-9\u00b9\u00b2\u00b3]|lpt[0-9\u00b9\u00b2\u00b3])(?=\.|$)/i;

/**
 * A name for a file without its ending, from any words: without the signs that some file systems refuse, never that of a
 * device, and never begun as a formula is, which programs that list files in tables would work out. `site` for nothing.
 */
export function safeFileName(words: string): string {
  const plain = words
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is taken out
    .replace(/[\u0000-\u001f\u007f-\u009f<>:"/\\|?*]+/g, ' ')
    .replace(/\s+/g, ' ')
    .replace(/^[. =+\-@\uff1d\uff0b\uff0d\uff20]+|[. ]+$/g, '')
    .slice(0, 100)
    .replace(/[. ]+$/, '')
    .replace(DEVICE, '$1 site');
  return plain || 'site';
}
