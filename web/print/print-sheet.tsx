import { useEffect, useRef } from 'react';
import { dayOf } from '../../calc/sheets/day.ts';
import { editionWords } from '../../calc/tables/editions.ts';
import { CAUTIONS } from '../../calc/words/cautions.ts';
import type { Painting } from '../board/painting.ts';
import type { DocumentState } from '../document/document-state.ts';
import { useDocumentStore } from '../document/use-document.tsx';
import { drawPlan } from './draw-plan.ts';

/**
 * What the browser's own Print puts on paper: the whole plan, fitted, its name, and the cautions. On the screen it is empty;
 * it is filled when the browser is about to print, for what it waits for then comes too late.
 */
export function PrintSheet({ painting }: { readonly painting: Painting }) {
  const store = useDocumentStore();
  const sheet = useRef<HTMLElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);

  useEffect(() => {
    const write = (texts: readonly string[]): void =>
      sheet.current?.querySelectorAll('p').forEach((line, i) => {
        line.textContent = texts[i] ?? '';
      });
    const before = (): void => {
      write(wordsOf(store.getState()));
      const picture = canvas.current;
      const shown = picture && drawPlan(picture, painting);
      if (shown) picture.dataset.shown = `${shown.minX} ${shown.minY} ${shown.maxX} ${shown.maxY}`;
    };
    const after = (): void => {
      write([]);
      // So large a picture is not kept for nothing.
      if (canvas.current) canvas.current.width = 0;
    };
    window.addEventListener('beforeprint', before);
    window.addEventListener('afterprint', after);
    return () => {
      window.removeEventListener('beforeprint', before);
      window.removeEventListener('afterprint', after);
    };
  }, [store, painting]);

  return (
    <section ref={sheet} className="print-sheet" aria-hidden="true">
      <p className="print-name" />
      <p />
      <canvas ref={canvas} data-testid="printed-plan" />
      <p />
    </section>
  );
}

function wordsOf({ name, plan, site }: DocumentState): readonly [name: string, what: string, cautions: string] {
  const count = (severity: string): number => plan.findings.filter((one) => one.severity === severity).length;
  return [
    name,
    `The plan as it stands on the page, ${dayOf(new Date())}: ${count('fail')} fail, ${count('warn')} to check. Not a sheet of the drawing set.`,
    `${CAUTIONS} Checked against the rules of the site and ${editionWords(site.rules)}.`,
  ];
}
