/** Least current that a pilot can call for, A. */
export const PILOT_FLOOR_AMPS = 6;
export const PILOT_FLOOR_SOURCE = 'SAE J1772 pilot duty cycle, from memory';
