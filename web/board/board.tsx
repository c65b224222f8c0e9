import { useEffect, useRef, useState } from 'react';
import { useDocument, useDocumentStore } from '../document/use-document.tsx';
import { usePageStore } from '../page-state/page-store.ts';
import { later, whenAsked, whenHere } from '../page-state/when-asked.tsx';
import { failureWords } from '../words/failure-words.ts';
import { isDrawTool } from './draw/tool-names.ts';
import { fitAgain, fitNow, resized } from './framing.ts';
import { keepPresses } from './kept-presses.ts';
import { Layers } from './painting/layers.tsx';
import type { Painting } from './painting/painting.ts';
import { BoardFoot } from './round/board-foot.tsx';
import { LookButtons } from './round/look-buttons.tsx';
import { MarginsKey } from './round/margins-key.tsx';
import { NorthArrow } from './round/north-arrow.tsx';
import { ScaleBar } from './round/scale-bar.tsx';
import { useView, useViewStore } from './view-store.ts';

/** Nothing of the hand is seen at first: it comes as soon as the drawing stands. */
const hand = later(() => import('./hand/hold-board.ts'));
const DrawActs = whenAsked(async () => (await import('./draw/draw-acts.tsx')).DrawActs);
const TypeIn = whenAsked(async () => (await import('./draw/type-in.tsx')).TypeIn);
const CoverageLegend = whenAsked(async () => (await import('./round/coverage-legend.tsx')).CoverageLegend);
const LoadsLegend = whenAsked(async () => (await import('./round/loads-legend.tsx')).LoadsLegend);
const RaiseBoard = whenAsked(async () => (await import('./raised/raise-board.tsx')).RaiseBoard);

/** The drawing of the site, with what the hand can do to it. The tables say the same in words. */
export function Board({ painting }: { readonly painting: Painting }) {
  const document = useDocumentStore();
  const view = useViewStore();
  const page = usePageStore();
  const element = useRef<HTMLDivElement>(null);
  const [tally, setTally] = useState<HTMLElement | null>(null);
  const opened = useDocument((state) => state.opened);
  const name = useDocument((state) => state.name);
  const measured = useView((state) => state.viewport.width > 0);
  const tool = useView((state) => state.tool);
  const doing = useView((state) => state.doing);
  const covered = useView((state) => state.coverage);
  const loaded = useView((state) => state.memberLoads);
  const over = useView((state) => state.hovered !== null);
  const raised = useView((state) => state.raised);
  const isRaised = useView((state) => state.raisedView !== null);

  useEffect(() => {
    const board = element.current;
    if (!board) return;
    // Opening a table or sizing the window asks for the drawing in its new room; the strip under it does not.
    const room = (): string => [window.innerWidth, window.innerHeight, page.getState().drawer].join(' ');
    let lastRoom = room();
    // The strip may open above it.
    const topOf = (): number => board.parentElement?.offsetTop ?? 0;
    let lastTop = topOf();
    const sized = new ResizeObserver(([entry]) => {
      if (!entry) return;
      const refits = lastRoom !== room();
      lastRoom = room();
      const { width, height } = entry.contentRect;
      const lower = topOf() - lastTop;
      lastTop += lower;
      resized(view, painting.scene(), { width: Math.round(width), height: Math.round(height) }, refits, lower);
    });
    sized.observe(board);
    setTally(board);
    return () => sized.disconnect();
  }, [document, view, page, painting]);

  const [tries, setTries] = useState(0);
  useEffect(() => {
    const board = element.current;
    if (!board) return;
    // What is pressed before it has come is not lost.
    const presses = keepPresses(board);
    const stop = whenHere(
      hand,
      ({ holdBoard }) => {
        const letGo = holdBoard(board, { document, view, page }, painting);
        presses.handOn();
        return letGo;
      },
      (error) =>
        document.getState().warn({
          says: `The board cannot be worked on: ${failureWords(error)}`,
          acts: [{ name: 'Try again', act: () => setTries((before) => before + 1) }],
        }),
    );
    return () => {
      presses.stop();
      stop();
    };
  }, [document, view, page, painting, tries]);

  // A newly opened document is the occasion, not an input.
  useEffect(() => {
    view.setState({ draft: null, draftWords: [], typing: null, measured: null, measureFrom: null });
    if (measured) fitNow(view, painting.scene());
    window.scrollTo(0, 0);
  }, [opened, measured, view, painting]);

  // The legend that comes takes some of the room in which the whole lot is shown.
  const shaded = useView((state) => state.coverage || state.memberLoads);
  useEffect(() => {
    if (shaded || isRaised) fitAgain(view, painting.scene());
  }, [shaded, isRaised, view, painting]);

  // On a phone the facts may have been scrolled over it.
  useEffect(() => {
    if (isDrawTool(tool)) element.current?.scrollIntoView({ block: 'nearest' });
  }, [tool]);

  return (
    <section className="board" aria-label="Board">
      <div
        ref={element}
        className="board-paper"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the drawing takes keys
        tabIndex={0}
        role="application"
        aria-roledescription="drawing"
        aria-label={`Drawing of ${name}. Point and comma go from one element to the next, arrows move it, F shows the whole lot. The tables below hold the same in words.`}
        data-testid="board"
        data-tool={tool}
        data-doing={doing}
        data-over={over ? 'yes' : 'no'}
        data-raised={isRaised ? 'yes' : 'no'}
        data-drawing={isDrawTool(tool) ? 'yes' : 'no'}
      >
        {tally && <Layers painting={painting} tally={tally} />}
      </div>
      {raised && <RaiseBoard />}
      <TypeIn />
      {covered && <CoverageLegend />}
      {loaded && <LoadsLegend />}
      <NorthArrow />
      <div className="board-keys over-board">
        <MarginsKey />
        <ScaleBar />
      </div>
      <DrawActs />
      <LookButtons painting={painting} />
      <BoardFoot />
    </section>
  );
}
