import { mustAskWho } from '../document/pen.ts';
import { usePageStore } from './page-store.ts';

/**
 * Has something written down by whoever holds this device: at once where they gave initials or were asked for them, else
 * once they were. They are asked once.
 */
export function useSigned(): (write: () => void) => void {
  const page = usePageStore();
  return (write) => {
    if (mustAskWho()) page.setState({ unsigned: write });
    else write();
  };
}
