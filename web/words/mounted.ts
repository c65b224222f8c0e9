import { printLength } from '../../routing/site/numbers/feet-inches.ts';
import type { Mount, Units } from '../../routing/site/schema/vocabulary.ts';
import { counted } from '../../routing/words/counted.ts';
import type { Mounted } from '../document/edits/charging/mount-drops.ts';

const NAMES: Readonly<Record<Mount, readonly [one: string, many: string]>> = {
  overhead: ['hangs overhead', 'hang overhead'],
  pedestal: ['is a pedestal', 'are pedestals'],
  wall: ['is on a wall', 'are on a wall'],
};

/**
 * What a change of mounts did, in sentences: where the boxes are now, what became of retractors, and how many chargers
 * are left without a way that comes to them where they stand.
 */
export function mountedWords(
  { edit, moved, bared, hung, elevation }: Mounted,
  mount: Mount,
  wayless: number,
  units: Units,
): string {
  const changed = edit.steps.flatMap((step) => (step.kind === 'change' ? [step.id] : []));
  const count = changed.length;
  if (count === 0) return '';
  const did = [
    ...(moved.length > 0
      ? [
          `${moved.length === 1 ? 'box' : 'boxes'} ${mount === 'overhead' ? 'up' : 'down'} at ${printLength(elevation, units)}`,
        ]
      : []),
    ...(bared.length > 0 ? [`${bared.length === 1 ? 'retractor' : 'retractors'} taken away`] : []),
    ...(hung.length > 0 ? [`${hung.length === 1 ? 'a retractor' : 'retractors'} hung below`] : []),
  ];
  const who = count === 1 ? `${changed[0]} ${NAMES[mount][0]} now` : `${count} drops ${NAMES[mount][1]} now`;
  const ways =
    wayless === 0
      ? ''
      : ` ${counted(wayless, 'charger has', 'chargers have')} no way that comes ${mount === 'pedestal' ? 'down ' : ''}to ${wayless === 1 ? 'it' : 'them'}${mount === 'pedestal' ? ': draw it, or have it proposed in the ground' : ''}.`;
  return `${who}${did.length > 0 ? `: ${did.join(', ')}` : ''}.${ways}`;
}
