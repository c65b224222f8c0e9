/** Where the pilot of a charger comes from, in the words of the finding on pilots that are too long. */
export const PILOT_WORDS = { yes: 'carried with the branch', no: 'source at the drop' } as const;
