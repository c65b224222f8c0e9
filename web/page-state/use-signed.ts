import { mustAskInitials } from '../document/pen.ts';
import { usePageStore } from './page-store.ts';

/**
 * Has something written down by whoever holds this device: at once where they gave initials or were asked for them, else
 * once they were, after what waits for that already. They are asked once. A page that is not seen can ask nobody.
 */
export function useSigned(): (write: () => void) => void {
  const page = usePageStore();
  return (write) => {
    if (!mustAskInitials() || document.visibilityState === 'hidden') {
      write();
      return;
    }
    const { unsigned: before } = page.getState();
    const both = (): void => {
      before?.();
      write();
    };
    page.setState({ unsigned: both });
  };
}
