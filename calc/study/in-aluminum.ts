import { inMetal } from '../propose/volts/other-metal.ts';
import type { StudyBase } from './base.ts';
import type { LayoutOutcome } from './layouts.ts';

/** A layout with the feeders that it brings of aluminum, as their breakers ask for: the drop is held after. */
export function inAluminum({ file }: StudyBase, made: LayoutOutcome): LayoutOutcome {
  if (!made.ok) return made;
  const before = new Set((file.feeders ?? []).map((one) => JSON.stringify(one)));
  const feeders = (made.file.feeders ?? []).filter((one) => one.existing !== true && !before.has(JSON.stringify(one)));
  if (feeders.length === 0) return { ok: false, says: 'It brings no feeder that could be of aluminum.' };
  const ids = new Set(feeders.map(({ id }) => id));
  return {
    ok: true,
    file: inMetal(made.file, ids, 'aluminum'),
    says: [
      ...made.says,
      `${feeders.map(({ id }) => id).join(', ')} of aluminum: every terminal that ${feeders.length === 1 ? 'it ends' : 'they end'} at is to be one that is marked for it.`,
    ],
  };
}
