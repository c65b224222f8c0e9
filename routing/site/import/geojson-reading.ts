import type { GroundSystem } from './ground-system.ts';

export type Position = readonly [lon: number, lat: number];

export type Plain = Readonly<Record<string, unknown>>;

/** What a feature has that is no longitude and latitude: it is left out, the others are shown. */
export class FeatureRefused extends Error {
  readonly place: string;
  constructor(place: string, says: string) {
    super(says);
    this.place = place;
  }
}

/** What is past the budget: nothing of the file is shown. */
export class BudgetSpent extends FeatureRefused {}

/** What is counted on the way through a file. */
export interface GeojsonReading {
  points: number;
  /** Rings that did not end where they began. */
  opened: number;
  decimals: number;
  readonly system: GroundSystem;
}

export function objectAt(value: unknown, place: string): Plain {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    throw new FeatureRefused(place, 'expected an object');
  return value as Plain;
}

export function listAt(value: unknown, place: string): readonly unknown[] {
  if (!Array.isArray(value)) throw new FeatureRefused(place, 'expected a list');
  return value;
}
