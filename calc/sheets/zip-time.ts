/**
 * The time that entries of a ZIP carry, wherever and whenever it is written: its format holds the clock's reading and no
 * zone, so a date told by the local clock is the same bytes everywhere.
 */
export const ZIP_TIME = new Date(2000, 0, 1);
