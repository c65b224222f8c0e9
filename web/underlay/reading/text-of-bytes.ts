/** Decoders for the code pages that a DXF names ($DWGCODEPAGE), by their numbers. */
const PAGES: Readonly<Record<string, string>> = {
  '874': 'windows-874',
  '932': 'shift_jis',
  '936': 'gbk',
  '949': 'euc-kr',
  '950': 'big5',
  '866': 'ibm866',
  ...Object.fromEntries(
    [1250, 1251, 1252, 1253, 1254, 1255, 1256, 1257, 1258].map((page) => [page, `windows-${page}`]),
  ),
};
/** Code pages of letters written as `\M+1xxxx`. */
const MULTIBYTE: Readonly<Record<string, string>> = { '1': '932', '2': '950', '3': '949', '5': '936' };
const HEAD_BYTES = 65_536;
const UTF8_MARK = '\u00ef\u00bb\u00bf';

/** Text as UTF-8, else as the code page that a drawing names, else as the western one that older files are written in. */
export function textOfBytes(bytes: Uint8Array): string {
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    const head = new TextDecoder('latin1').decode(bytes.subarray(0, HEAD_BYTES));
    const page = /\$DWGCODEPAGE\s+3\s+(?:ANSI_|DOS)?(\d{3,4})/i.exec(head)?.[1] ?? '';
    // Marked as UTF-8 it is that, with a fault somewhere.
    const name = head.startsWith(UTF8_MARK) ? 'utf-8' : (PAGES[page] ?? 'windows-1252');
    text = new TextDecoder(name).decode(bytes);
  }
  return text.replace(/\\M\+([1235])([0-9a-f]{2})([0-9a-f]{2})/gi, (_, page: string, high: string, low: string) =>
    new TextDecoder(PAGES[MULTIBYTE[page]!]).decode(
      new Uint8Array([Number.parseInt(high, 16), Number.parseInt(low, 16)]),
    ),
  );
}
