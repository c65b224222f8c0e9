import { dropAsBuilt } from '../../../../routing/site/place/as-built.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import type { Edit } from '../../change/edit.ts';
import { elementOf, elementsOf } from '../../change/element-lists.ts';
import { changeStep } from '../gather.ts';
import { measuredAt } from './marks-steps.ts';

/** Draws a drop where its record says that it was built. Nothing where there is no record, or it hangs as drawn. */
export function drawAsBuilt(file: SiteFile, id: string): Edit {
  const drop = elementOf(file, 'drops', id);
  const steps = drop ? changeStep('drops', drop, dropAsBuilt(drop, measuredAt(file, id))) : [];
  return { name: `Draw ${id} where it was built`, steps };
}

/** Draws every drop that was measured where it was found; the records stay. */
export function takeAsBuilt(file: SiteFile): Edit {
  const steps = elementsOf(file, 'drops').flatMap((drop) =>
    changeStep('drops', drop, dropAsBuilt(drop, measuredAt(file, drop.id))),
  );
  return { name: `Take ${steps.length === 1 ? 'a drop' : `${steps.length} drops`} as built into the design`, steps };
}
