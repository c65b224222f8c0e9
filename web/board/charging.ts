/** Amperes that the chargers of a drop give at a time of a charging day, and could give. */
export interface DropCharging {
  readonly amps: number;
  readonly most: number;
}
