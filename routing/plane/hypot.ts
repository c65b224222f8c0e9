/**
 * The length of a vector in the plan, as `Math.hypot` has it in Node: scaled by its largest part, the squares summed with
 * compensation. Written out, for the built-in makes lists at each call, and lengths are what many thousands are asked for.
 */
export function hypot2(x: number, y: number): number {
  const a = Math.abs(x);
  const b = Math.abs(y);
  if (b === 0) return a;
  if (a === 0) return b;
  const most = Math.max(a, b);
  if (!(most < Number.POSITIVE_INFINITY)) return Math.hypot(a, b);
  const p = a / most;
  const q = b / most;
  return Math.sqrt(p * p + q * q) * most;
}

/** The same of a vector in space. */
export function hypot3(x: number, y: number, z: number): number {
  const a = Math.abs(x);
  const b = Math.abs(y);
  const c = Math.abs(z);
  if (b === 0 && c === 0) return a;
  if (a === 0 && c === 0) return b;
  if (a === 0 && b === 0) return c;
  const most = Math.max(a, b, c);
  if (!(most < Number.POSITIVE_INFINITY)) return Math.hypot(a, b, c);
  const p = a / most;
  const q = b / most;
  const r = c / most;
  const first = p * p;
  const second = q * q;
  const two = first + second;
  return Math.sqrt(two + (r * r - (two - first - second))) * most;
}
