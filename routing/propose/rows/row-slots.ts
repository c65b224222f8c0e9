/** How the stalls of one row lie side by side. Lengths in feet. */
export interface SlotShape {
  /** Across the stall, square to its stripes. */
  readonly width: number;
  /** Least widths of an accessible stall, and of one for a van. */
  readonly accessibleWidth: number;
  readonly vanWidth: number;
  /** Width of the access aisle beside them. */
  readonly accessAisle: number;
}

export type SlotUse = 'standard' | 'accessible' | 'van-accessible';

/** A strip of a row between two stripes: a stall, or the access aisle between two. */
export interface Slot {
  readonly kind: 'stall' | 'access';
  readonly width: number;
  readonly use: SlotUse;
}

/**
 * Car stall 96 in., van stall 132 in., access aisle 60 in., which two stalls may share: 2010 ADA Standards 502.2 to
 * 502.4. In feet.
 */
export const ACCESSIBLE_SLOTS = { accessibleWidth: 8, vanWidth: 11, accessAisle: 5 } as const;

/**
 * The strips of a row whose stalls have these uses, in order. An accessible stall has an access aisle after it; where
 * the next is accessible too, the two share it.
 */
export function slotsOf(uses: readonly SlotUse[], shape: SlotShape): Slot[] {
  const slots: Slot[] = [];
  let shared = false;
  for (const use of uses) {
    const least = use === 'standard' ? 0 : use === 'accessible' ? shape.accessibleWidth : shape.vanWidth;
    slots.push({ kind: 'stall', width: Math.max(shape.width, least), use });
    if (use === 'standard' || shared) shared = false;
    else {
      slots.push({ kind: 'access', width: shape.accessAisle, use });
      shared = true;
    }
  }
  return slots;
}
