import type { Site } from '../site/site.ts';
import { nowOf, reachBetween, reachOfAll } from './kept-reach.ts';
import type { Reach } from './reach-result.ts';

/**
 * The reach of every charger's cord to every stall it serves, in the chargers' order, and for each charger in the order of
 * the stalls it serves. Lengths in feet. A `Reach` is the same object as in the last call where nothing that had a say in
 * it has changed: moving one drop of thousands works one charger again, moving a stall those with a cord near it. Expects a
 * site as read: a reference to an element that is not there is a RangeError.
 */
export const reachOf = (site: Site): readonly Reach[] => reachOfAll(nowOf(site)).reach;

/**
 * The reach of some chargers of a site, from one place up to another, kept for `reachOf`: a page can work a large site in
 * slices with it. RangeError where there are none.
 */
export const reachOfChargers = (site: Site, from: number, to: number): readonly Reach[] =>
  reachBetween(nowOf(site), from, to);
