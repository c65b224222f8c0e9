import { useEffect } from 'react';
import { useViewStore } from '../view-store.ts';
import { RAISED_VIEW } from './raised-pictures.ts';

/** Raises the board for as long as it is there; it shows nothing itself. */
export function RaiseBoard() {
  const view = useViewStore();
  useEffect(() => {
    view.setState({ raisedView: RAISED_VIEW });
    return () => view.setState({ raisedView: null });
  }, [view]);
  return null;
}
