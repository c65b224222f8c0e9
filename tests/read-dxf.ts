import { drawDxf } from '../routing/site/import/dxf.ts';
import type { Imported, ImportedLine, LineDrawing } from '../routing/site/import/imported.ts';

/** What `drawDxf` reads, with its lines in one list. */
export function readDxf(text: string, tell?: (share: number) => void): Imported<LineDrawing> {
  const lines: ImportedLine[] = [];
  const read = drawDxf(text, (line) => lines.push(line), tell);
  return read.ok ? { ok: true, value: { ...read.value, lines } } : read;
}
