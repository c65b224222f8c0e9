import { useEffect, useRef, useState } from 'react';
import { useDocument, useDocumentStore } from '../document/use-document.tsx';
import { usePageStore } from '../page-state/page-store.ts';
import { whenAsked } from '../page-state/when-asked.tsx';
import { BoardFoot } from './board-foot.tsx';
import { DrawActs } from './draw/draw-acts.tsx';
import { drawHand } from './draw/draw-hand.ts';
import { attachDrawKeys } from './draw/draw-keys.ts';
import { isDrawTool } from './draw/tool-names.ts';
import { TypeIn } from './draw/type-in.tsx';
import { fitAgain, fitNow, resized } from './framing.ts';
import { attachClips } from './hand/clips.ts';
import { attachKeys } from './hand/keys.ts';
import { attachPointer } from './hand/pointer.ts';
import { attachWheel } from './hand/wheel.ts';
import { Layers } from './layers.tsx';
import { LookButtons } from './look-buttons.tsx';
import { MarginsKey } from './margins-key.tsx';
import { NorthArrow } from './north-arrow.tsx';
import type { Painting } from './painting.ts';
import { ScaleBar } from './scale-bar.tsx';
import { useView, useViewStore } from './view-store.ts';

const CoverageLegend = whenAsked(async () => (await import('./coverage-legend.tsx')).CoverageLegend);
const LoadsLegend = whenAsked(async () => (await import('./loads-legend.tsx')).LoadsLegend);
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
    const desk = { document, view, page };
    const draw = drawHand(desk, painting.base);
    const world = { element: board, document, view, page, scene: painting.scene, draw };
    const stops = [
      attachDrawKeys(board, desk, draw),
      attachPointer(world),
      attachWheel(world),
      attachClips(world),
      attachKeys(world),
      () => sized.disconnect(),
    ];
    setTally(board);
    return () => {
      for (const stop of stops) stop();
    };
  }, [document, view, page, painting]);

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
