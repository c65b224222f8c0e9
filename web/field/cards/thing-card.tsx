import type { ListName } from '../../document/change/element-lists.ts';
import { wordFor } from '../../document/edits/in-words.ts';
import { useDocumentStore } from '../../document/use-document.tsx';
import { BuildPanel } from '../../panels/as-built/build-panel.tsx';
import { FieldFacts } from './field-facts.tsx';

/** What was tapped on the drawing and is no drop, in the hand: where it stands, and what is done with it. */
export function ThingCard({ list, id }: { readonly list: ListName; readonly id: string }) {
  const document = useDocumentStore();
  return (
    <section className="build-card build-card-open" aria-label={id}>
      <header>
        <h2>{id}</h2>
        <span>{wordFor(list)}</span>
        <button type="button" className="plain" onClick={() => document.getState().select([])}>
          Close
        </button>
      </header>
      <div className="build-card-scroll">
        <FieldFacts list={list} id={id} />
        <BuildPanel list={list} id={id} />
      </div>
    </section>
  );
}
