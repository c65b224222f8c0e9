/** A time of the clock from minutes after midnight, of this day or the next. */
export function timeWords(minutes: number): string {
  const ofDay = ((minutes % 1440) + 1440) % 1440;
  return `${String(Math.floor(ofDay / 60)).padStart(2, '0')}:${String(ofDay % 60).padStart(2, '0')}`;
}
