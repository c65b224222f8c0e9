/** The day of a moment where the machine stands, as it is printed on sheets: `2026-11-25`. The page and the command line share it. */
export function dayOf(moment: Date): string {
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${moment.getFullYear()}-${two(moment.getMonth() + 1)}-${two(moment.getDate())}`;
}
