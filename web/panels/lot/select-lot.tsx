import { ELEMENT_LISTS, isPlaced } from '../../../routing/site/kinds/kinds.ts';
import { useView } from '../../board/view-store.ts';
import { elementsOf } from '../../document/change/element-lists.ts';
import { useDocumentStore } from '../../document/use-document.tsx';

/**
 * Selects all that has a place, steel and aisles too, which a box leaves out: so the lot is moved, turned or mirrored as
 * a whole, and its gridlines with it. Kinds that are locked or hidden stay behind.
 */
export function SelectLot() {
  const document = useDocumentStore();
  const locked = useView((state) => state.lockedKinds);
  const hidden = useView((state) => state.hiddenKinds);
  const lists = ELEMENT_LISTS.filter((list) => isPlaced(list) && !locked.has(list) && !hidden.has(list));
  return (
    <button
      type="button"
      className="plain"
      onClick={() => {
        const { file, select } = document.getState();
        select(lists.flatMap((list) => elementsOf(file, list).map(({ id }) => ({ list, id }))));
      }}
    >
      Select the whole lot
    </button>
  );
}
