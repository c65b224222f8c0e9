import type { StudyWay } from './shape.ts';

/** What a way is, with the other ways to say it where several came to the same. */
export const wayName = ({ name, also }: Pick<StudyWay, 'name' | 'also'>): string =>
  also.length === 0 ? name : `${name} (the same comes of: ${also.join('; of: ')})`;
