/** Drive aisles as published for an angle, feet. */
const PUBLISHED: readonly { readonly angle: number; readonly aisle: number }[] = [
  // One way beside parallel stalls: common practice, no source.
  { angle: 0, aisle: 12 },
  // Snohomish (WA) 14.235.270, one way.
  { angle: 45, aisle: 13.5 },
  { angle: 60, aisle: 18.5 },
  // Redwood City (CA) minimum parking dimensions.
  { angle: 75, aisle: 23 },
  // Two way; the same in Snohomish, Portsmouth (VA) and Redwood City.
  { angle: 90, aisle: 24 },
];

/** A usual width of the drive aisle beside stalls of an angle, feet: that of the next steeper angle that is published. */
export const usualAisle = (angle: number): number =>
  PUBLISHED.find((row) => angle <= row.angle)?.aisle ?? PUBLISHED.at(-1)!.aisle;
