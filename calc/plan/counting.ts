import { feederLays } from '../steel/feeder-lays.ts';
import { hungOf } from '../steel/hung.ts';
import { supportsOf } from '../steel/kept-supports.ts';
import { takeoff } from '../takeoff/takeoff.ts';

/**
 * What counts and weighs a plan: its takeoff, its supports, what hangs from the steel. No other stage is made of it, so
 * that the page plans and draws a site before this has come.
 */
export const COUNTING = { takeoff, hungOf, supportsOf, feederLays };

export type Counting = typeof COUNTING;
