import type { Point2 } from '../../../site.ts';
import { asNumber, type DxfRecord, flagsOf } from '../records.ts';

const CLOSED = 2;

/**
 * The lines of a multiline, walls for one: at each vertex (11) every line lies so far along the miter (13) as its first
 * parameter (41) says.
 */
export function multiLine(
  record: DxfRecord,
): readonly { readonly points: readonly Point2[]; readonly closed: boolean }[] | null {
  const lines: Point2[][] = [];
  let vertex: [number, number] = [Number.NaN, Number.NaN];
  let miter: [number, number] = [Number.NaN, Number.NaN];
  let element = 0;
  let wanted = 0;
  record.codes.forEach((code, i) => {
    const value = asNumber(record.values[i]!);
    if (code === 11) {
      vertex = [value, 0];
      element = 0;
    } else if (code === 21) vertex[1] = value;
    else if (code === 13) miter = [value, 0];
    else if (code === 23) miter[1] = value;
    else if (code === 74) wanted = value;
    else if (code === 41 && wanted > 0) {
      wanted = 0;
      lines[element] ??= [];
      lines[element]!.push([vertex[0] + miter[0] * value, vertex[1] + miter[1] * value]);
      element += 1;
    }
  });
  if (lines.length === 0 || lines.some((points) => points.length < 2)) return null;
  // In a multiline 71 has the flags that others have under 70. Whether its ends are closed is its style's affair.
  const closed = (flagsOf(record, 71) & CLOSED) !== 0;
  return lines.map((points) => ({ points, closed }));
}
