import type { UnderlayKind } from '../../routing/site/vocabulary.ts';

/** What a person can pick, for the file dialog. */
export const UNDERLAY_EXTENSIONS = ['.png', '.jpg', '.jpeg', '.pdf', '.dxf', '.svg', '.geojson', '.json'] as const;

const startsWith = (bytes: Uint8Array, ...signs: readonly number[]): boolean =>
  signs.every((sign, i) => bytes[i] === sign);

/** The kind of a file by its own first bytes, whatever its name; null where it is none that can lie under a drawing. */
export function kindOf(bytes: Uint8Array): UnderlayKind | null {
  if (startsWith(bytes, 0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return 'png';
  if (startsWith(bytes, 0xff, 0xd8, 0xff)) return 'jpeg';
  const head = new TextDecoder('latin1').decode(bytes.subarray(0, 4096)).replace(/^\u00ef\u00bb\u00bf/, '');
  // The mark of a PDF may stand a little way in (ISO 32000, annex H.3.4.1).
  if (head.slice(0, 1024).includes('%PDF-')) return 'pdf';
  if (/^\s*(<\?xml[^>]*>\s*)?(<!--[\s\S]*?-->\s*|<!DOCTYPE[^>]*>\s*)*<svg[\s>]/i.test(head)) return 'svg';
  if (/^\s*[{[]/.test(head)) return 'geojson';
  // Comments (999) may come before the first section.
  if (/^(\s*999\r?\n.*\r?\n)*\s*0\s*\r?\n\s*SECTION/.test(head)) return 'dxf';
  return null;
}

/** Whether a file is a site file and not an underlay: both may be JSON. */
export const looksLikeSite = (bytes: Uint8Array): boolean =>
  new TextDecoder('latin1').decode(bytes.subarray(0, 4096)).includes('overrow/site');
