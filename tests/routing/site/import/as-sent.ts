import type { LineDrawing } from '../../../../routing/site/import/imported.ts';
import { readDxf } from '../../../read-dxf.ts';
import { dxfOf, type Parts } from './dxf-text.ts';

export function read(text: string): LineDrawing {
  const got = readDxf(text);
  if (!got.ok) throw new Error(`${got.fault.place} ${got.fault.says}`);
  return got.value;
}
export const drawn = (parts: Parts): LineDrawing => read(dxfOf(parts));
