import { changeOptions } from '../../board/draw/drawing-options.ts';
import { useDesk } from '../../board/draw/use-desk.ts';
import type { DrawOptions, DrawToolName } from '../../board/kinds/kinds.ts';
import { useView } from '../../board/view-store.ts';

/** The options of a drawing action, and the way to change some of them: what is being drawn follows. */
export function useOptions<T extends DrawToolName>(
  name: T,
): readonly [DrawOptions[T], (patch: Partial<DrawOptions[T]>) => void] {
  const desk = useDesk();
  const options = useView((state) => state.drawOptions[name]);
  return [options, (patch) => changeOptions(desk, name, patch)];
}
