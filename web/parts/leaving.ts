import { TYPED } from './typed.ts';

/**
 * A press elsewhere leaves the field that is being typed in before what is pressed hears of it: what it selects may take
 * the field away, and with it what was typed. A finger leaves it when it lifts from the board; elsewhere it may push.
 */
export function attachLeaving(): () => void {
  const press = ({ type, target, pointerType }: PointerEvent): void => {
    const field = document.activeElement;
    if (!(field instanceof HTMLElement) || !field.matches(TYPED)) return;
    if (!(target instanceof Element) || field.contains(target)) return;
    const lifts = pointerType === 'touch';
    if (type === (lifts ? 'pointerup' : 'pointerdown') && (!lifts || target.closest('.board-paper'))) field.blur();
  };
  addEventListener('pointerdown', press, true);
  addEventListener('pointerup', press, true);
  return () => {
    removeEventListener('pointerdown', press, true);
    removeEventListener('pointerup', press, true);
  };
}
