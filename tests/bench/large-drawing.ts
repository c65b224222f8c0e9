/** Feet between its things. */
const STEP = 1.37;

/**
 * A drawing as a surveyor sends it: so many entities, about 100 bytes each: two thirds polylines of four points on
 * a hundred layers, the others lines, arcs, circles, points and words; in feet.
 */
export function largeDrawing(entities: number): string {
  const out: string[] = ['0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n2\n0\nENDSEC\n0\nSECTION\n2\nENTITIES'];
  const across = Math.ceil(Math.sqrt(entities));
  for (let i = 0; i < entities; i++) {
    const x = (i % across) * STEP;
    const y = Math.floor(i / across) * STEP;
    const layer = `C-TOPO-${i % 100}`;
    const at = (dx: number, dy: number, code = 10): string =>
      `${code}\n${(x + dx).toFixed(4)}\n${code + 10}\n${(y + dy).toFixed(4)}`;
    switch (i % 24) {
      case 16:
      case 17:
      case 18:
      case 19:
        out.push(`0\nLINE\n8\n${layer}\n62\n3\n${at(0, 0)}\n${at(1, 0.5, 11)}`);
        break;
      case 20:
        out.push(`0\nARC\n8\n${layer}\n${at(0, 0)}\n40\n0.5\n50\n0\n51\n120`);
        break;
      case 21:
      case 22:
        out.push(`0\nPOINT\n8\n${layer}\n${at(0, 0)}`);
        break;
      case 23:
        if (i % 48 === 23) out.push(`0\nTEXT\n8\n${layer}\n${at(0, 0)}\n40\n0.2\n1\n${100 + (i % 37)}.${i % 10}`);
        else out.push(`0\nCIRCLE\n8\n${layer}\n${at(0, 0)}\n40\n0.25`);
        break;
      default:
        out.push(
          `0\nLWPOLYLINE\n8\n${layer}\n90\n3\n70\n0\n${at(0, 0)}\n${at(0.4, 0.3)}\n${at(1, 0.3)}\n${at(1.2, 0.9)}`,
        );
    }
  }
  out.push('0\nENDSEC\n0\nEOF\n');
  return out.join('\n');
}
