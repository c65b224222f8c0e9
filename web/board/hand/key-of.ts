/** The key of an event as it is without Caps Lock: a letter is large with Shift and small without. */
export function keyOf({ key, shiftKey }: Pick<KeyboardEvent, 'key' | 'shiftKey'>): string {
  if (key.length !== 1) return key;
  return shiftKey ? key.toUpperCase() : key.toLowerCase();
}
