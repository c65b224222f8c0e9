import { deflateSync } from 'node:zlib';
import { PDFDocument, PDFName, rgb, StandardFonts } from '@cantoo/pdf-lib';

const crcTable = Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c >>> 0;
});

function chunk(type: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  let crc = 0xffffffff;
  for (const byte of body) crc = (crcTable[(crc ^ byte) & 0xff]! ^ (crc >>> 8)) >>> 0;
  const head = Buffer.alloc(4);
  head.writeUInt32BE(data.length);
  const tail = Buffer.alloc(4);
  tail.writeUInt32BE((crc ^ 0xffffffff) >>> 0);
  return Buffer.concat([head, body, tail]);
}

/** A PNG of one colour (PNG specification, third edition), with a broad frame ten pixels in. */
export function png(width: number, height: number): Buffer {
  const rows: Buffer[] = [];
  for (let y = 0; y < height; y++) {
    const row = Buffer.alloc(1 + 3 * width, 0xd8);
    row[0] = 0;
    for (let x = 0; x < width; x++) {
      const edge = Math.min(x, y, width - 1 - x, height - 1 - y);
      if (edge >= 10 && edge < 18) row.set([180, 30, 200], 1 + 3 * x);
    }
    rows.push(row);
  }
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([8, 2, 0, 0, 0], 8);
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(Buffer.concat(rows))),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

/** Two pages of 36 x 24 in. with lines, a fill and words in a font that every reader is expected to have. */
export async function pdf(): Promise<Buffer> {
  const doc = await PDFDocument.create();
  const font = await doc.embedFont(StandardFonts.Helvetica);
  for (const number of [1, 2]) {
    const page = doc.addPage([36 * 72, 24 * 72]);
    page.drawRectangle({ x: 200, y: 200, width: 1400, height: 900, borderWidth: 6, borderColor: rgb(0.7, 0.1, 0.8) });
    page.drawRectangle({ x: 1700, y: 300, width: 600, height: 600, color: rgb(0.1, 0.5, 0.2) });
    page.drawText(`SITE PLAN ${number}`, { x: 300, y: 900, size: 120, font });
  }
  return Buffer.from(await doc.save());
}

/** A page with nothing on it but its scale and a reviewer's mark: a violet box, by its appearance stream (ISO 32000, 12.5.5). */
export async function markedPdf(): Promise<Buffer> {
  const doc = await PDFDocument.create();
  const page = doc.addPage([36 * 72, 24 * 72]);
  page.drawText('SCALE: 1" = 20\'-0"', {
    x: 1800,
    y: 100,
    size: 24,
    font: await doc.embedFont(StandardFonts.Helvetica),
  });
  const look = doc.context.stream('0.7 0.1 0.8 rg 0 0 1400 900 re f', {
    Type: 'XObject',
    Subtype: 'Form',
    BBox: [0, 0, 1400, 900],
  });
  const mark = doc.context.obj({
    Type: 'Annot',
    Subtype: 'Square',
    Rect: [200, 200, 1600, 1100],
    F: 4,
    AP: { N: doc.context.register(look) },
  });
  page.node.set(PDFName.of('Annots'), doc.context.obj([doc.context.register(mark)]));
  return Buffer.from(await doc.save());
}

/** A double row of 9 x 18 ft stalls with a 24 ft aisle between, columns and a kerb, in inches. */
export function dxf(): Buffer {
  const out: string[] = [
    '0',
    'SECTION',
    '2',
    'HEADER',
    '9',
    '$INSUNITS',
    '70',
    '1',
    '0',
    'ENDSEC',
    '0',
    'SECTION',
    '2',
    'ENTITIES',
  ];
  const closed = (layer: string, points: readonly (readonly [number, number])[]): void => {
    out.push('0', 'LWPOLYLINE', '8', layer, '90', String(points.length), '70', '1');
    for (const [x, y] of points) out.push('10', String(x * 12), '20', String(y * 12));
  };
  for (let i = 0; i < 12; i++)
    for (const y of [0, 42])
      closed('STALL', [
        [9 * i, y],
        [9 * i + 9, y],
        [9 * i + 9, y + 18],
        [9 * i, y + 18],
      ]);
  for (let i = 0; i < 5; i++)
    out.push('0', 'CIRCLE', '8', 'COLUMN', '10', String((9 + 22 * i) * 12), '20', String(-1.5 * 12), '40', '9');
  closed('KERB', [
    [-4, -6],
    [112, -6],
    [112, 66],
    [-4, 66],
  ]);
  out.push('0', 'TEXT', '8', 'NOTES', '10', '0', '20', '0', '40', '10', '1', 'north lot', '0', 'ENDSEC', '0', 'EOF');
  return Buffer.from(`${out.join('\n')}\n`);
}

export const svg = (): Buffer =>
  Buffer.from(
    '<svg xmlns="http://www.w3.org/2000/svg" width="800" height="500" viewBox="0 0 800 500" onload="document.title=\'ran\'"><script>document.title="ran"</script><image href="http://127.0.0.1:9/away.png"/><path d="M50 50H750V450H50Z" fill="none" stroke="#b01ec8" stroke-width="6"/></svg>',
  );
