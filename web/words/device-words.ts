/** Where the overcurrent device of a feeder stands, as a person chooses it. */
export const DEVICE_WORDS = {
  '': 'as usual',
  from: 'where it starts',
  to: 'where it ends',
  both: 'at both ends',
  none: 'nowhere: it taps to a transformer',
} as const;

/** Whether something is there, as far as anybody says. */
export const GIVEN_WORDS = { '': 'not given', true: 'yes', false: 'no' } as const;

/** What lets conductors start without a device and no drawing shows. */
export const TAP_WORDS = {
  '': 'nothing special',
  'high-bay': 'a high manufacturing bay',
  industrial: 'an industrial switchboard',
} as const;
