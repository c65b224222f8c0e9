import { deleteElements } from '../../document/edits/delete.ts';
import { moveElements } from '../../document/edits/moving/move.ts';
import { keepsDrawing } from '../../document/field-work.ts';
import { nearestOpen } from '../../words/nearest-open.ts';
import { pushed } from '../camera.ts';
import { chooseTool } from '../draw/choose-tool.ts';
import { fitAll, frameRefs, zoomBy } from '../framing.ts';
import { heldBy } from '../kinds/kinds.ts';
import { refOf } from '../scene/mark.ts';
import { marksOf } from '../scene/scene.ts';
import { longStepOf, stepOf } from '../snap/step.ts';
import type { HandWorld } from './hand-world.ts';
import { keyOf } from './key-of.ts';

type KeyWorld = Omit<HandWorld, 'draw'>;

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};
/** Pixels by which an arrow pushes the drawing where nothing is selected. */
const PUSH = 60;

/** Everything that the pointer does on the board, by keys; they hold while the board has the focus. */
export function attachKeys({ element, document, view, page, scene }: KeyWorld): () => void {
  // Arrows that are held make one edit, done when the last of them is let go.
  let nudge: readonly [number, number] = [0, 0];
  const held = new Set<string>();

  const arrow = (event: KeyboardEvent, way: readonly [number, number]): void => {
    const { selection, committed, preview } = document.getState();
    if (selection.length === 0 || keepsDrawing(document.getState())) {
      view.setState({ camera: pushed(view.getState().camera, -way[0] * PUSH, way[1] * PUSH) });
      return;
    }
    held.add(event.key);
    const { units } = scene();
    const step = event.shiftKey ? longStepOf(units) : stepOf(units);
    nudge = [nudge[0] + way[0] * step, nudge[1] + way[1] * step];
    preview(moveElements(committed().file, selection, nudge[0], nudge[1]));
  };
  const settle = (): void => {
    held.clear();
    if (nudge[0] === 0 && nudge[1] === 0) return;
    nudge = [0, 0];
    document.getState().commitPreview();
  };

  const down = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey) {
      if (keyOf(event) === 'a') {
        event.preventDefault();
        const { drops } = scene();
        document.getState().select(drops.items.flatMap((mark) => refOf(mark) ?? []));
      }
      return;
    }
    const way = ARROWS[event.key];
    if (way) {
      event.preventDefault();
      arrow(event, way);
      return;
    }
    const act = ACTS[keyOf(event)];
    if (!act || event.altKey) return;
    event.preventDefault();
    act({ element, document, view, page, scene });
  };
  const up = (event: KeyboardEvent): void => {
    if (!held.delete(event.key) || held.size > 0) return;
    settle();
  };

  const stop = new AbortController();
  const { signal } = stop;
  element.addEventListener('keydown', down, { signal });
  element.addEventListener('keyup', up, { signal });
  element.addEventListener('blur', settle, { signal });
  return () => stop.abort();
}

type Act = (world: KeyWorld) => void;

const remove: Act = ({ document }) => {
  const { file, selection, apply } = document.getState();
  if (selection.length > 0) apply(deleteElements(file, selection));
};

const ACTS: Readonly<Record<string, Act>> = {
  Delete: remove,
  Backspace: remove,
  Escape: ({ document, view }) => {
    // Half a measurement is thrown away first, and the hand goes on measuring.
    const half = view.getState().measureFrom !== null;
    view.setState({ measured: null, measureFrom: null });
    if (half) return;
    document.getState().select([]);
    view.setState({ tool: 'select' });
  },
  '+': ({ view }) => zoomBy(view, 1.4),
  '=': ({ view }) => zoomBy(view, 1.4),
  '-': ({ view }) => zoomBy(view, 1 / 1.4),
  f: ({ view, scene }) => fitAll(view, scene()),
  F: ({ view, scene, document }) => frameRefs(view, scene(), document.getState().selection),
  '.': (world) => step(world, 1),
  ',': (world) => step(world, -1),
  g: ({ page }) => page.setState({ find: true }),
  q: ({ document, view, scene }) => {
    const { site, selection, select } = document.getState();
    const next = nearestOpen(site, selection.find(({ list }) => list === 'drops')?.id ?? null);
    if (!next) return;
    select([{ list: 'drops', id: next.id }]);
    frameRefs(view, scene(), [{ list: 'drops', id: next.id }]);
  },
  h: ({ view }) => view.setState({ raised: !view.getState().raised }),
  j: (world) => chooseTool(world, 'select'),
  n: (world) => chooseTool(world, 'pan'),
  m: (world) => chooseTool(world, 'measure'),
};

/** The elements in the order in which the keys go through them: first what is worked on most. */
const TOUR = heldBy('tour');

function step({ document, view, scene }: KeyWorld, by: 1 | -1): void {
  const all = TOUR.flatMap((list) => marksOf(scene(), list).items.flatMap((mark) => refOf(mark) ?? []));
  const { selection, select } = document.getState();
  const [first] = selection;
  const at = first ? all.findIndex(({ list, id }) => list === first.list && id === first.id) : by > 0 ? -1 : 0;
  const next = all[(at + by + all.length) % all.length];
  if (!next) return;
  select([next]);
  frameRefs(view, scene(), [next]);
}
