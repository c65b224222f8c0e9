import { useEffect, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import { dayOf } from '../../calc/sheets/days/day.ts';
import { editionWords } from '../../calc/tables/editions.ts';
import { CAUTIONS } from '../../calc/words/cautions.ts';
import type { Painting } from '../board/painting/painting.ts';
import { useViewStore } from '../board/view-store.ts';
import type { DocumentState } from '../document/document-state.ts';
import { useDocumentStore } from '../document/use-document.tsx';
import { drawPlan, type OnPaper, onPaper } from './draw-plan.ts';
import { legendOf } from './legend.ts';
import type { PictureSize } from './paper-view.ts';
import { ScaleStrip } from './scale-strip.tsx';

interface Printed {
  readonly papers: readonly OnPaper[];
  readonly raised: boolean;
  readonly state: DocumentState;
}

/**
 * What the browser's own Print puts on paper: the part of the plan that is looked at, as it is looked at, at a standard
 * scale with its bar, legend and the cautions. On the screen it is empty; it is filled when the browser is about to
 * print, at once, for what it waits for then comes too late.
 */
export function PrintSheet({ painting }: { readonly painting: Painting }) {
  const store = useDocumentStore();
  const view = useViewStore();
  const canvases = { small: useRef<HTMLCanvasElement>(null), large: useRef<HTMLCanvasElement>(null) };
  const { small, large } = canvases;
  const [printed, setPrinted] = useState<Printed | null>(null);

  useEffect(() => {
    const before = (): void => {
      const papers = (['small', 'large'] as const).map((size) => onPaper(painting, view.getState(), size));
      flushSync(() => setPrinted({ papers, raised: view.getState().raised, state: store.getState() }));
      for (const paper of papers) {
        const { current } = paper.size === 'small' ? small : large;
        if (current) drawPlan(current, paper);
      }
    };
    // So large a picture is not kept for nothing.
    const after = (): void => setPrinted(null);
    window.addEventListener('beforeprint', before);
    window.addEventListener('afterprint', after);
    return () => {
      window.removeEventListener('beforeprint', before);
      window.removeEventListener('afterprint', after);
    };
  }, [store, view, painting, small, large]);

  return (
    <section className="print-sheet" aria-hidden="true">
      {printed && <Sheet {...printed} canvases={canvases} />}
    </section>
  );
}

/** What is said of a picture in which heights are drawn. */
const RAISED = 'Heights are drawn straight up over the plan, at its scale: slanted lines are not to be scaled.';

function Sheet({
  papers,
  raised,
  state,
  canvases,
}: Printed & { readonly canvases: Readonly<Record<PictureSize, React.RefObject<HTMLCanvasElement | null>>> }) {
  const { name, plan, site } = state;
  const count = (severity: string): number => plan.findings.filter((one) => one.severity === severity).length;
  return (
    <>
      <p className="print-name">{name}</p>
      <p>
        The plan as it is looked at on the page, {dayOf(new Date())}: {count('fail')} fail, {count('warn')} to check in
        all of it. Not a sheet of the drawing set. To scale where it is printed at its actual size (100%).
        {raised && ` ${RAISED}`}
      </p>
      {papers.map((paper) => (
        <div key={paper.size} className={`print-${paper.size}`}>
          <canvas ref={canvases[paper.size]} data-testid={paper.size === 'small' ? 'printed-plan' : 'printed-large'} />
          <ScaleStrip
            says={`Scale: ${paper.scale.says}`}
            pxPerFoot={paper.camera.scale}
            units={site.units}
            north={site.georef?.bearing}
            legend={legendOf(paper)}
          />
        </div>
      ))}
      <p>
        {CAUTIONS} Checked against the rules of the site and {editionWords(site.rules)}.
      </p>
    </>
  );
}
