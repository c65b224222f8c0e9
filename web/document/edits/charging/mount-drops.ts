import { USUAL_DROP, USUAL_PEDESTAL } from '../../../../calc/propose/usual.ts';
import type { Mount } from '../../../../routing/site/schema/vocabulary.ts';
import type { Drop, Site, SiteFile } from '../../../../routing/site/site.ts';
import type { Edit, EditStep } from '../../change/edit.ts';
import { inFile } from '../../change/file-lengths.ts';
import { changeStep, held } from '../gather.ts';
import { inWords } from '../in-words.ts';

/** What a change of mounts did. */
export interface Mounted {
  readonly edit: Edit;
  /** Drops whose box came down or went up with it, and those that lost or got a retractor. */
  readonly moved: readonly string[];
  readonly bared: readonly string[];
  readonly hung: readonly string[];
  /** Elevation that the boxes came to, feet. */
  readonly elevation: number;
}

/**
 * Mounts drops otherwise, in one step. On a pedestal or a wall a box that is out of a hand's reach comes down to a usual
 * height, and the retractor that hung the cord is taken away: the cord hangs from the box. Overhead again, a box at that
 * height goes up to where drops usually hang, with a retractor below it.
 */
export function mountDrops(file: SiteFile, site: Site, ids: readonly string[], mount: Mount): Mounted {
  const inFeet = new Map(site.drops.map((drop) => [drop.id, drop]));
  const { pedestalHeight } = site.rules;
  const elevation = mount === 'overhead' ? USUAL_DROP.elevation : Math.min(USUAL_PEDESTAL.elevation, pedestalHeight);
  const [moved, bared, hung]: [string[], string[], string[]] = [[], [], []];
  const steps = held(
    file,
    ids.map((id) => ({ list: 'drops', id })),
  ).flatMap(({ element }): readonly EditStep[] => {
    const before = element as Drop;
    const { box, retractor, mount: was = 'overhead' } = inFeet.get(before.id)!;
    if (was === mount) return [];
    const standsNow = mount !== 'overhead';
    const isOut = standsNow ? box[2] > pedestalHeight : box[2] <= pedestalHeight;
    const at = (z: number): Drop['box'] => [before.box[0], before.box[1], inFile(file, z)];
    const { mount: _, retractor: own, ...rest } = before;
    const hangs = standsNow || !isOut ? own : (own ?? at(elevation - USUAL_DROP.retractorBelow));
    if (isOut) moved.push(before.id);
    if (standsNow && retractor !== undefined) bared.push(before.id);
    if (!standsNow && retractor === undefined && hangs !== undefined) hung.push(before.id);
    const after: Drop = {
      ...rest,
      box: isOut ? at(elevation) : before.box,
      ...(!standsNow && hangs !== undefined && { retractor: hangs }),
      ...(standsNow && { mount }),
    };
    return changeStep('drops', before, after);
  });
  const changed = steps.flatMap((step) => (step.kind === 'change' ? [{ list: 'drops' as const, id: step.id }] : []));
  return { edit: { name: `Set the mount of ${inWords(changed)}`, steps }, moved, bared, hung, elevation };
}
