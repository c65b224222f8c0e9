import { toSite } from '../../routing/site/to-site.ts';
import type { PriceList } from '../prices/price-list.ts';
import { panelsOf } from '../propose/feeding.ts';
import { type StudyBase, withoutBoards } from './base.ts';
import { drawnLayout, type LayoutOutcome } from './layouts.ts';
import type { StudyMount } from './shape.ts';

/** New panels in the place of the boards that are drawn, with the loads of those on the first of them. */
export function onPanels(base: StudyBase, mount: StudyMount, prices: PriceList, mayGoOn: () => boolean): LayoutOutcome {
  const cleared = withoutBoards(base);
  if (cleared === null) return { ok: false, says: 'An inverter hangs on a board that would be taken away.' };
  const made = drawnLayout(cleared.file, base.wanted, mount, base.amps, prices, mayGoOn);
  if (!made.ok || cleared.loads.length === 0) return made;
  const panels = panelsOf(toSite(made.file));
  const loads = cleared.loads.map((load) =>
    panels.some(({ id }) => id === load.from) ? load : { ...load, from: panels[0]!.id },
  );
  return {
    ok: true,
    file: { ...made.file, loads: [...(made.file.loads ?? []), ...loads] },
    says: [...made.says, `The new panels feed ${loads.map(({ id }) => id).join(', ')} too.`],
  };
}
