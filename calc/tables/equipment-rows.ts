/** Percent of rated current; null where no protection is required on that side. */
export interface TransformerProtectionRow {
  readonly protection: 'primary only' | 'primary and secondary';
  readonly primary: { readonly from9: number; readonly under9: number; readonly under2: number };
  readonly secondary: { readonly from9: number; readonly under9: number } | null;
}

export interface TransformerRow {
  readonly kva: number;
  /** Least efficiency at 35% load, percent. */
  readonly efficiency: number;
  /** Full-load amperes by line-to-line volts. */
  readonly amps: Readonly<Partial<Record<208 | 240 | 480, number>>>;
  readonly lossAt35: number | null;
  /** Resistance in percent, were half the loss at 35% load in the windings, and were all of it. */
  readonly resistanceHalf: number | null;
  readonly resistanceBound: number | null;
}

export interface TypicalImpedanceRow {
  readonly kva: number;
  readonly rise: '150C' | '115C';
  readonly z: number;
  readonly x: number;
  readonly r: number;
  readonly xr: number;
}

/** A plausible band, not a rating. */
export interface ImpedanceBandRow {
  readonly kva: number;
  readonly z: readonly [low: number, high: number];
  readonly xr: readonly [low: number, high: number];
  readonly middleR: number;
}

/** Depth of working space, ft, by what is opposite. */
export interface WorkingSpaceRow {
  readonly toVolts: number;
  /** Live parts on one side, nothing live or grounded opposite. */
  readonly clear: number;
  /** Grounded parts opposite; concrete, brick and tile count. */
  readonly grounded: number;
  /** Live parts on both sides. */
  readonly live: number;
}
