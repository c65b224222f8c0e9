/** Where the overcurrent device of a feeder stands, as a person chooses it. */
export const DEVICE_WORDS = {
  '': 'as usual',
  from: 'where it starts',
  to: 'where it ends',
  both: 'at both ends',
} as const;
