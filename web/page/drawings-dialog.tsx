import { DrawingsFields } from '../panels/site/drawings-form.tsx';
import { Dialog } from '../parts/dialog.tsx';
import { Scroller } from '../parts/scroller.tsx';

/** Chooses what the drawing set is for and what is in it. */
export function DrawingsDialog({ close }: { readonly close: () => void }) {
  return (
    <Dialog title="What is in the drawing set" onClose={close}>
      <Scroller className="dialog-scroll fields" aria-label="Purpose, sheets, areas and notes">
        <DrawingsFields />
      </Scroller>
    </Dialog>
  );
}
