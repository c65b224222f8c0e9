/** Line current, A, of a load of `va` across two lines (1 phase) or balanced on three, `volts` line to line. */
export const lineAmps = (va: number, volts: number, phases: 1 | 3): number =>
  va / (phases === 3 ? Math.sqrt(3) * volts : volts);
