import type { PlacedEquipment } from './propose-equipment.ts';

/** How far a box is from a placed piece, along the lot and square to it, feet; infinite where it is not for that piece. */
type Far = (box: number, piece: PlacedEquipment) => number;

/**
 * The same pieces without those whose boxes the others can take, none of them then for more than `holds` boxes or farther
 * than `most` feet from one; the piece with the fewest boxes goes first. Each box goes to the nearest piece that has room.
 */
export function merged(
  placed: readonly PlacedEquipment[],
  holds: number,
  most: number,
  far: Far,
): readonly PlacedEquipment[] {
  const order = [...placed.keys()].sort((a, b) => placed[a]!.boxes.length - placed[b]!.boxes.length || b - a);
  let now = placed.map((piece): PlacedEquipment | null => piece);
  for (const i of order) now = without(i, now, holds, most, far) ?? now;
  return now.filter((piece) => piece !== null);
}

/** The pieces with the boxes of one of them given to the others; null where they cannot take them all. */
function without(
  going: number,
  pieces: readonly (PlacedEquipment | null)[],
  holds: number,
  most: number,
  far: Far,
): (PlacedEquipment | null)[] | null {
  const given = pieces.map((): number[] => []);
  for (const box of pieces[going]!.boxes) {
    let [best, least] = [-1, Math.min(most, Number.MAX_VALUE)];
    pieces.forEach((piece, i) => {
      if (piece === null || i === going || piece.boxes.length + given[i]!.length >= holds) return;
      const feet = far(box, piece);
      if (feet <= least) [best, least] = [i, feet];
    });
    if (best < 0) return null;
    given[best]!.push(box);
  }
  return pieces.map((piece, i) => {
    if (piece === null || i === going) return null;
    const more = given[i]!;
    if (more.length === 0) return piece;
    const feet = more.map((box) => far(box, piece));
    return {
      ...piece,
      boxes: [...piece.boxes, ...more].sort((a, b) => a - b),
      total: piece.total + feet.reduce((sum, one) => sum + one, 0),
      longest: Math.max(piece.longest, ...feet),
    };
  });
}
