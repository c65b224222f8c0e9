import type { CodeTable } from '../table.ts';

/** A hung thing that comes in sizes: up to `upTo` it weighs from `low` to `high` pounds. */
export interface ComponentRow {
  readonly item: string;
  /** Largest that the row is for, in the unit of its table. */
  readonly upTo: number;
  readonly low: number;
  readonly high: number;
}

const PRACTICE = 'common practice, no source';
const VERIFIED = 'Not verified: ranges only. The upper figure is what is hung.';
const DOUBTS = ['Use the weights of the chosen items, from their submittals, in place of these.'];

/** Square boxes with their cover, by volume, cubic inches. */
export const BOX_WEIGHTS: CodeTable<ComponentRow> = {
  source: PRACTICE,
  verified: VERIFIED,
  doubts: DOUBTS,
  rows: [
    { item: '4 in square box with cover', upTo: 30.3, low: 1.5, high: 2.5 },
    { item: '4-11/16 in square box with cover', upTo: 42, low: 2.5, high: 4 },
    { item: '6 x 6 x 4 in box with cover', upTo: 144, low: 4, high: 7 },
    { item: '8 x 8 x 4 in box with cover', upTo: 256, low: 6, high: 9 },
    { item: '12 x 12 x 4 in box with cover', upTo: 576, low: 11, high: 16 },
    { item: '12 x 12 x 6 in box with cover', upTo: 864, low: 14, high: 20 },
  ],
};

/** Pull boxes with their cover, by length, inches. */
export const PULL_BOX_WEIGHTS: CodeTable<ComponentRow> = {
  source: PRACTICE,
  verified: VERIFIED,
  doubts: [...DOUBTS, 'One longer than 36 in weighs as much more as its cover is larger.'],
  rows: [
    { item: '8 x 8 x 4 in pull box', upTo: 8, low: 6, high: 9 },
    { item: '12 x 12 x 6 in pull box', upTo: 12, low: 14, high: 20 },
    { item: '18 x 18 x 6 in pull box', upTo: 18, low: 25, high: 40 },
    { item: '24 x 24 x 8 in pull box', upTo: 24, low: 45, high: 75 },
    { item: '36 x 36 x 12 in pull box', upTo: 36, low: 110, high: 170 },
  ],
};

/** Cords of 25 ft with their connector, by rated amperes. */
export const CORD_WEIGHTS: CodeTable<ComponentRow> = {
  source: PRACTICE,
  verified: `${VERIFIED} The copper in each cord is less than its lower figure.`,
  doubts: [...DOUBTS, 'One of more amperes weighs as much more as it has amperes.'],
  rows: [
    { item: '25 ft cord, 32 A', upTo: 32, low: 7, high: 10 },
    { item: '25 ft cord, 40 A', upTo: 40, low: 10, high: 14 },
    { item: '25 ft cord, 48 A', upTo: 48, low: 11, high: 19 },
    { item: '25 ft cord, 80 A', upTo: 80, low: 18, high: 28 },
  ],
};

/** Length of the cords of `CORD_WEIGHTS`, ft. */
export const CORD_FEET = 25;

/** The connector at the end of a cord, pounds. */
export const CONNECTOR: ComponentRow = { item: 'connector', upTo: 1, low: 0.8, high: 2 };

/** Retractors and balancers by the pounds that they can hold. */
export const RETRACTOR_WEIGHTS: CodeTable<ComponentRow> = {
  source: PRACTICE,
  verified: VERIFIED,
  doubts: [...DOUBTS, 'One for more than 60 lb weighs as much more as it holds.'],
  rows: [
    { item: 'retractor, to 15 lb', upTo: 15, low: 7, high: 15 },
    { item: 'retractor, to 30 lb', upTo: 30, low: 12, high: 25 },
    { item: 'retractor, to 60 lb', upTo: 60, low: 25, high: 45 },
  ],
};

/** Charging modules without their cord, by rated amperes. */
export const MODULE_WEIGHTS: CodeTable<ComponentRow> = {
  source: PRACTICE,
  verified: VERIFIED,
  doubts: [...DOUBTS, 'One of more amperes weighs as much more as it has amperes.'],
  rows: [
    { item: 'charging unit, 32 to 48 A', upTo: 48, low: 5, high: 20 },
    { item: 'charging unit, 80 A', upTo: 80, low: 15, high: 35 },
  ],
};

/** What couplings, straps and locknuts add to a raceway, as a share of it. */
export const FITTINGS = {
  share: 0.04,
  source: `${PRACTICE}: couplings add 2 to 4 percent`,
} as const;

/** A tray with its fittings, pounds a foot, empty. */
export const TRAY = { pounds: 5, source: PRACTICE } as const;

/** Slotted channel 1-5/8 in square, pounds a foot; threaded rod 3/8 in; and what clamps a rod to the steel, pounds. */
export const TRAPEZE_PARTS = { channelFoot: 1.9, rodFoot: 0.3, clamp: 1, source: `${PRACTICE}, from memory` } as const;
