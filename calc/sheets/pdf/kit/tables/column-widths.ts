/** Widths of columns in so much room, points: the last takes what the others leave; where that is little, the widest give. */
export function givenWidths(natural: readonly number[], width: number): readonly number[] {
  const others = natural.slice(0, -1);
  const sum = others.reduce((total, one) => total + one, 0);
  const pressedOthers = sum > width * 0.7 ? pressed(others, width * 0.7) : others;
  return [...pressedOthers, width - pressedOthers.reduce((total, one) => total + one, 0)];
}

/** Widths of columns, points, taken from the widest columns until all fit. */
export function pressed(widths: readonly number[], most: number): readonly number[] {
  let [low, high] = [0, Math.max(...widths)];
  for (let i = 0; i < 40; i++) {
    const limit = (low + high) / 2;
    const sum = widths.reduce((total, width) => total + Math.min(width, limit), 0);
    if (sum > most) high = limit;
    else low = limit;
  }
  return widths.map((width) => Math.min(width, low));
}
