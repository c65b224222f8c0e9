import { pushed, zoomed } from '../camera.ts';
import type { HandWorld } from './hand-world.ts';

/** A notch of a mouse's wheel is a whole number of some such size; a trackpad sends small and slanting steps. */
const NOTCH = 50;

/** A wheel zooms to the pointer, two fingers on a trackpad push the drawing, and a pinch zooms. */
export function attachWheel({ element, view }: Pick<HandWorld, 'element' | 'view'>): () => void {
  const turn = (event: WheelEvent): void => {
    event.preventDefault();
    const { camera, viewport } = view.getState();
    const box = element.getBoundingClientRect();
    const at = { px: event.clientX - box.left, py: event.clientY - box.top };
    const unit = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 33 : 1;
    const dx = event.deltaX * unit;
    const dy = event.deltaY * unit;
    const notched = dx === 0 && Math.abs(dy) >= NOTCH && Number.isInteger(dy);
    if (event.ctrlKey || event.metaKey || (notched && !event.shiftKey)) {
      const strength = notched ? 0.0018 : 0.01;
      view.setState({ camera: zoomed(camera, viewport, at, Math.exp(-dy * strength)) });
    } else if (event.shiftKey && dx === 0) view.setState({ camera: pushed(camera, -dy, 0) });
    else view.setState({ camera: pushed(camera, -dx, -dy) });
  };
  element.addEventListener('wheel', turn, { passive: false });
  return () => element.removeEventListener('wheel', turn);
}
