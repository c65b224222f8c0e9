import { useDocument } from '../document/use-document.tsx';
import { usePage, usePageStore } from './page-store.ts';

/**
 * A text that is typed in a form and not handed in yet, by what the form is for. It stands while the site is open, so
 * that whoever goes to look something up on the board finds it again.
 */
export function useUnsent(form: string): readonly [text: string, setText: (text: string) => void] {
  const page = usePageStore();
  const opened = useDocument((state) => state.opened);
  const of = `${opened} ${form}`;
  const text = usePage(({ unsent }) => unsent.get(of) ?? '');
  return [text, (next) => page.setState(({ unsent }) => ({ unsent: new Map(unsent).set(of, next) }))];
}
