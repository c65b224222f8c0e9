import type { Inlet, Vehicle } from './site.ts';

const feet = (inches: number): number => inches / 12;

/**
 * Weights of the inlet corners in percent, middles of the ranges rear-left 45-55, front-left 20-25, rear-right 15-20,
 * front centre 3-6, front-right 3-5; they add up to 98.5. Common practice, no source: no open sales-weighted count
 * was found.
 */
const CORNER_WEIGHTS = { rearLeft: 50, frontLeft: 22.5, rearRight: 17.5, frontCentre: 4.5, frontRight: 4 };
const WEIGHTS_TOTAL = Object.values(CORNER_WEIGHTS).reduce((sum, weight) => sum + weight, 0);

/**
 * Inlets at the end of the usual range of places that is farthest from a cord overhead: fenders 0.10 to 0.28 of the
 * length from the nose, quarters 0.76 to 0.95, front centre 0 to 0.03; heights 28 to 42, 28 to 44 and 26 to 34 in.
 * Common practice, no source. Left is the driver's side of a left-hand-drive car.
 */
const INLETS: readonly Inlet[] = [
  { name: 'rear-left', along: 0.95, side: 'left', height: feet(28), share: CORNER_WEIGHTS.rearLeft / WEIGHTS_TOTAL },
  { name: 'front-left', along: 0.1, side: 'left', height: feet(28), share: CORNER_WEIGHTS.frontLeft / WEIGHTS_TOTAL },
  { name: 'rear-right', along: 0.95, side: 'right', height: feet(28), share: CORNER_WEIGHTS.rearRight / WEIGHTS_TOTAL },
  { name: 'front', along: 0, side: 'front', height: feet(26), share: CORNER_WEIGHTS.frontCentre / WEIGHTS_TOTAL },
  {
    name: 'front-right',
    along: 0.1,
    side: 'right',
    height: feet(28),
    share: CORNER_WEIGHTS.frontRight / WEIGHTS_TOTAL,
  },
];

const vehicle = (lengthIn: number, widthIn: number, heightIn: number): Vehicle => ({
  length: feet(lengthIn),
  width: feet(widthIn),
  height: feet(heightIn),
  inlets: INLETS,
});

/**
 * The vehicle classes a site may name without describing them. In feet. A file's own class of the same name stands in its
 * place. Lengths, widths and heights are those of an open data set of US-market plug-in models, December 2025, one entry
 * a model, not weighted by sales; how, stands beside each.
 */
export const BUILT_IN_VEHICLES: ReadonlyMap<string, Vehicle> = new Map([
  // A small car: 5th percentiles of 89 models.
  ['compact', vehicle(164, 70, 56)],
  // Medians of the cars, 33 models.
  ['sedan', vehicle(195, 76, 57)],
  // Medians of sport utilities and crossovers, 50 models.
  ['suv', vehicle(187, 76, 65)],
  // The largest of length 216 to 230 in and height 71 to 76 in, 3 models only.
  ['pickup', vehicle(230, 80, 76)],
  // A van or people mover: medians of 3 models only. Full-height cargo vans stand 100 to 110 in (from memory).
  ['van', vehicle(202, 78, 74)],
]);
