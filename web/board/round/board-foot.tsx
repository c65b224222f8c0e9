import { useLayoutEffect, useRef } from 'react';
import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import { planWords } from '../../../routing/site/place/gridline-words.ts';
import type { Units } from '../../../routing/site/schema/vocabulary.ts';
import type { Point2, Site } from '../../../routing/site/site.ts';
import { counted } from '../../../routing/words/counted.ts';
import { inWords } from '../../document/edits/in-words.ts';
import { keepsDrawing } from '../../document/field-work.ts';
import { useDocument } from '../../document/use-document.tsx';
import { whenAsked } from '../../page-state/when-asked.tsx';
import { nearestInch } from '../../words/lengths.ts';
import { inHand } from '../draw/desk.ts';
import { EMPTY } from '../draw/draft.ts';
import { isDrawTool } from '../draw/tool-names.ts';
import { useDesk } from '../draw/use-desk.ts';
import { useView, useViewStore, type ViewState } from '../view-store.ts';

const TypeThem = whenAsked(async () => (await import('../draw/type-them.tsx')).TypeThem);

interface Advice {
  readonly action: string;
  readonly next: string;
  readonly keys: readonly (readonly [key: string, does: string])[];
}

/** What the hand does, what to do next, and the keys that matter. */
function advice(
  tool: ViewState['tool'],
  doing: ViewState['doing'],
  selected: string,
  keeps: boolean,
  measured: 'none' | 'half' | 'whole',
): Advice {
  if (doing === 'dragging')
    return {
      action: 'Moving',
      next: `Let go to put ${selected} down.`,
      keys: [
        ['0-9', 'how far'],
        ['Shift', 'one way only'],
        ['Alt', 'no snapping'],
        ['Esc', 'put back'],
      ],
    };
  if (doing === 'boxing')
    return { action: 'Select', next: 'Let go to take what lies wholly inside.', keys: [['Esc', 'stop']] };
  if (doing === 'panning' || tool === 'pan')
    return {
      action: 'Pan',
      next: 'Drag to push the drawing.',
      keys: [
        ['J', 'select'],
        ['F', 'fit'],
      ],
    };
  if (tool === 'measure')
    return {
      action: 'Measure',
      next:
        measured === 'half'
          ? 'Press where it ends.'
          : measured === 'whole'
            ? 'It stays until the next one. Press where that begins.'
            : 'Press where it begins and where it ends, or drag.',
      keys: [
        ['J', 'select'],
        ['Esc', 'clear'],
      ],
    };
  if (keeps)
    return {
      action: 'Build',
      next: selected
        ? 'Write down what was measured. The drawing stays as it is.'
        : 'Click a drop, here or in the list.',
      keys: [
        ['. ,', 'next, last'],
        ['F', 'fit'],
        ['?', 'all keys'],
      ],
    };
  if (selected)
    return {
      action: 'Select',
      next: `Drag ${selected}, or nudge it with the arrows.`,
      keys: [
        ['Shift', 'a foot a nudge'],
        ['Del', 'delete'],
        ['Shift+F', 'frame it'],
      ],
    };
  return {
    action: 'Select',
    next: 'Click a drop, stall, raceway or equipment; drag over several.',
    keys: [
      ['Shift', 'adds'],
      ['Wheel', 'zoom'],
      ['Right drag', 'pan'],
      ['F', 'fit'],
      ['?', 'all keys'],
    ],
  };
}

/** One line under the drawing: the action, what to do next, the keys, and where the pointer is. */
export function BoardFoot() {
  const tool = useView((state) => state.tool);
  const doing = useView((state) => state.doing);
  const asks = useView((state) => state.asks);
  const measured = useView(({ measured, measureFrom }) => (measureFrom ? 'half' : measured ? 'whole' : 'none'));
  const selection = useDocument((state) => state.selection);
  const desk = useDesk();
  const draft = useView((state) => state.draft);
  useView((state) => state.drawOptions);
  const keeps = useDocument(keepsDrawing);
  const held = inHand(desk);
  const { action, next, keys } =
    held && doing !== 'panning'
      ? held.tool.advice(draft ?? EMPTY, held.options)
      : advice(tool, doing, selection.length > 0 ? inWords(selection) : '', keeps, measured);
  return (
    <div className="board-foot">
      <p className="advice">
        <b>{asks ? 'Underlay' : action}.</b> {asks ?? next}{' '}
        <span className="keys">
          {keys.map(([key, does]) => (
            <span key={key}>
              <kbd>{key}</kbd> {does}
            </span>
          ))}
        </span>
      </p>
      <Coordinates />
    </div>
  );
}

function Coordinates() {
  const draws = useView((state) => isDrawTool(state.tool));
  // A person who sets out measures from gridlines.
  const builds = useDocument((state) => state.station === 'build');
  const gridlines = useDocument(
    ({
      site: {
        gridlines: { x, y },
      },
    }) => x.length + y.length > 0,
  );
  return (
    <p className="coordinates" data-testid="coordinates">
      <KindsAside />
      <Measured />
      {gridlines && (
        <span className={builds ? 'on-grid' : 'on-grid wide-only'}>
          <PointerText print={onGrid} none="" />
        </span>
      )}
      {!(gridlines && builds) &&
        AXES.map(({ name, print }) => (
          <span key={name}>
            {name} <PointerText print={print} />
          </span>
        ))}
      {draws && <TypeThem />}
    </p>
  );
}

/** What was measured, in words: the drawing alone would keep it from those who do not see it. */
function Measured() {
  const units = useDocument((state) => state.site.units);
  // While the hand measures, the drawing says it: this would be written at each step.
  const measured = useView((state) => (state.measureFrom ? null : state.measured));
  if (!measured) return null;
  const [[ax, ay], [bx, by]] = measured;
  return (
    <span>
      measured <b data-testid="measured">{printLength(Math.hypot(bx - ax, by - ay), units)}</b>
    </span>
  );
}

interface Pointed {
  readonly at: Point2;
  readonly units: Units;
  readonly grid: Site['gridlines'];
  /** What is moved lies on the snap and is told exactly; the bare pointer only to the inch, or it would flicker. */
  readonly exact: boolean;
}

const lengthOf = ({ exact }: Pointed) => (exact ? printLength : nearestInch);

const AXES = [
  { name: 'x', print: (to: Pointed): string => lengthOf(to)(to.at[0], to.units) },
  { name: 'y', print: (to: Pointed): string => lengthOf(to)(to.at[1], to.units) },
] as const;

/** As a crew finds it: from the nearest gridlines. */
const onGrid = (to: Pointed): string => planWords(to.at, to.grid, to.units, lengthOf(to));

/** Where the pointer is, written past React: it changes with every step of a drag. */
function PointerText({ print, none = '–' }: { readonly print: (pointed: Pointed) => string; readonly none?: string }) {
  const view = useViewStore();
  const units = useDocument((state) => state.site.units);
  const grid = useDocument((state) => state.site.gridlines);
  const text = useRef<HTMLElement>(null);
  useLayoutEffect(() => {
    const write = ({ pointer, doing, draft }: ViewState): void => {
      const exact = doing === 'dragging' || draft !== null;
      const words = pointer ? print({ at: pointer, units, grid, exact }) : none;
      if (text.current && text.current.textContent !== words) text.current.textContent = words;
    };
    write(view.getState());
    return view.subscribe(write);
  }, [view, units, grid, print, none]);
  return <b ref={text} />;
}

/** What the board leaves out or the hand leaves alone is said where one looks, or it would be missed. */
function KindsAside() {
  const hidden = useView((state) => state.hiddenKinds.size);
  const locked = useView((state) => state.lockedKinds.size);
  if (hidden + locked === 0) return null;
  const words = [
    hidden > 0 && `${counted(hidden, 'kind')} hidden`,
    locked > 0 && `${locked} ${hidden > 0 ? '' : locked === 1 ? 'kind ' : 'kinds '}locked`,
  ];
  return <span>{words.filter(Boolean).join(', ')}</span>;
}
