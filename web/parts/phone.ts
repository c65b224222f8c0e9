import { useSyncExternalStore } from 'react';

/** Screens so narrow, or so low and touched, are held in a hand; the style sheets say the same. */
export const PHONE = '(max-width: 760px), (max-height: 480px) and (pointer: coarse)';

const heed = (changed: () => void): (() => void) => {
  const phone = matchMedia(PHONE);
  phone.addEventListener('change', changed);
  return () => phone.removeEventListener('change', changed);
};

/** Whether the page is held in a hand. */
export const usePhone = (): boolean => useSyncExternalStore(heed, () => matchMedia(PHONE).matches);
