/** What the browser says of the room that it gives the page, in bytes; null where it does not say. */
export interface Room {
  readonly used: number;
  readonly of: number;
}

const LEAST_LEFT = 50e6;
const MOST_USED = 0.9;

/** Bytes left where they are so few that a person should know of it; else null. */
export function lowStorage(room: Room | null): number | null {
  if (!room || room.of <= 0) return null;
  const left = room.of - room.used;
  return left < LEAST_LEFT || room.used / room.of > MOST_USED ? left : null;
}
