/**
 * Line current, A, of a load of `va` across two lines (1 phase) or balanced on three, `volts` line to line.
 * @example
 * // Hand-worked: 7,200 / 240; 150,000 / (sqrt 3 x 480)
 * lineAmps(7200, 240, 1) // 30
 * lineAmps(150_000, 480, 3) // 180.42
 */
export const lineAmps = (va: number, volts: number, phases: 1 | 3): number =>
  va / (phases === 3 ? Math.sqrt(3) * volts : volts);
