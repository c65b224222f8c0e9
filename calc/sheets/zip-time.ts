/**
 * The time that entries of a ZIP carry, wherever and whenever it is written: its format holds the clock's reading and no
 * zone, so a time told without one is the same bytes everywhere.
 */
export const ZIP_TIME = '2000-01-01T00:00:00';
