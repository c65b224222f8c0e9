import { createHash } from 'node:crypto';
import { dirname, join } from 'node:path';
import { direction } from '../../../routing/plane/direction.ts';
import type { Site, Underlay } from '../../../routing/site/site.ts';
import type { Underlay as Laid } from '../../sheets/pdf/kit/underlay.ts';
import type { Machine } from '../machine.ts';

/** What can be laid under the plans of a set, from the lowest up, and what is to be said of the rest. */
export interface UnderlaysFound {
  readonly laid: readonly Laid[];
  readonly remarks: readonly string[];
}

/**
 * The underlays that a site has on its sheets, out of the folder of its file, where they are looked for by their names: pages
 * of PDF files and PNG and JPEG pictures, that are the same, byte for byte, as those that were placed.
 */
export function underlaysBeside(path: string, site: Site, machine: Pick<Machine, 'bytes'>): UnderlaysFound {
  const laid: Laid[] = [];
  const remarks: string[] = [];
  const all = [...(site.underlay ? [site.underlay] : []), ...(site.underlays ?? [])];
  for (const underlay of all.filter(({ hidden, unprinted }) => !hidden && !unprinted)) {
    const { file, kind, hash, page = 1, scale, rotation = 0, dim } = underlay;
    const left = (why: string): void => void remarks.push(`the underlay ${file} is left out: ${why}`);
    if (kind !== 'pdf' && kind !== 'png' && kind !== 'jpeg') {
      left(`a drawing of the kind ${kind} is laid under the sheets on the page alone`);
      continue;
    }
    const bytes = bytesOf(join(dirname(path), file), machine);
    if (bytes === null) left('it is not in the folder of the site file');
    else if (createHash('sha256').update(bytes).digest('hex') !== hash) left('the file of its name there is another');
    else if (kind === 'jpeg' && isTurned(bytes))
      left('its camera marked it as turned; save it upright and place it anew');
    else {
      const [x, y] = cornerOf(underlay);
      const known = { bytes, file, placement: { x, y, scale, rotation }, ...(dim !== undefined && { dim }) };
      laid.push(kind === 'pdf' ? { ...known, kind, page } : { ...known, kind });
    }
  }
  return { laid, remarks };
}

function bytesOf(path: string, machine: Pick<Machine, 'bytes'>): Uint8Array | null {
  try {
    return machine.bytes(path);
  } catch {
    return null;
  }
}

/** Where the lower left corner of an underlay lies on the site, feet: the site says where `origin` does. */
function cornerOf({ at, origin = [0, 0], scale, rotation = 0 }: Underlay): readonly [number, number] {
  const [cos, sin] = direction(rotation);
  const [u, v] = [-origin[0] * scale, -origin[1] * scale];
  return [at[0] + u * cos - v * sin, at[1] + u * sin + v * cos];
}

/** A JPEG picture is to be shown otherwise than its lines lie: its Exif orientation (tag 0x0112) is not 1. */
function isTurned(bytes: Uint8Array): boolean {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let at = 2; at + 18 < bytes.length && bytes[at] === 0xff; at += 2 + view.getUint16(at + 2)) {
    if (bytes[at + 1] === 0xda) return false;
    if (bytes[at + 1] !== 0xe1 || view.getUint32(at + 4) !== 0x45786966) continue;
    const start = at + 10;
    const little = view.getUint16(start) === 0x4949;
    const entries = start + view.getUint32(start + 4, little);
    if (entries + 2 > bytes.length) return false;
    for (let i = 0; i < view.getUint16(entries, little); i++) {
      const entry = entries + 2 + 12 * i;
      if (entry + 10 > bytes.length) return false;
      if (view.getUint16(entry, little) === 0x0112) return view.getUint16(entry + 8, little) !== 1;
    }
  }
  return false;
}
