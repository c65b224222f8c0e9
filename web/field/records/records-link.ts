import { deflateSync, inflateSync, strFromU8, strToU8 } from 'fflate';
import {
  type RecordsFile,
  type RecordsRead,
  readRecords,
  writeRecords,
} from '../../../routing/site/records/records-file.ts';

/** What stands before the records in the address of the page. */
const LINK_MARK = '#records=';
/** Messages of phones carry so long a link whole. Common practice, no source. */
const LONGEST_LINK = 4000;
/** Most bytes that a link unpacks to. */
const MOST_BYTES = 4_000_000;

/** The page's own address with records in it, behind its mark, so that nothing of them goes to any host; null where it would be too long. */
export function linkOf(file: RecordsFile, page: string): string | null {
  const bytes = deflateSync(strToU8(writeRecords(file)), { level: 9 });
  const text = btoa(String.fromCharCode(...bytes.subarray(0, LONGEST_LINK)))
    .replace(/\+/g, '-')
    .replace(/\//g, '_')
    .replace(/=+$/, '');
  const link = `${page.replace(/#.*$/, '')}${LINK_MARK}${text}`;
  return bytes.length <= LONGEST_LINK && link.length <= LONGEST_LINK ? link : null;
}

/** The records in an address, or in its text pasted anywhere; null where there are none. */
export function recordsInLink(address: string): RecordsRead | null {
  const at = address.indexOf(LINK_MARK);
  if (at < 0) return null;
  const damaged: RecordsRead = { ok: false, errors: [{ place: '', says: 'the link is not whole' }] };
  try {
    const text = address
      .slice(at + LINK_MARK.length)
      .trim()
      .replace(/-/g, '+')
      .replace(/_/g, '/');
    const packed = Uint8Array.from(atob(text), (sign) => sign.charCodeAt(0));
    return readRecords(strFromU8(inflateSync(packed, { out: new Uint8Array(MOST_BYTES) })));
  } catch {
    return damaged;
  }
}
