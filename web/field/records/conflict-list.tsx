import { readingWords } from '../../../calc/field/commissioning/measures.ts';
import { gridlineWords } from '../../../routing/site/place/gridline-words.ts';
import { conflictsOf, type Register } from '../../../routing/site/records/registers.ts';
import type { Mark, Site } from '../../../routing/site/site.ts';
import { useDocument } from '../../document/use-document.tsx';
import { whoSays } from '../cards/steps-facts.tsx';
import { useMarks } from './use-marks.ts';

/** Where two people say different things: both as they wrote it, and which is to hold. Nothing is overwritten meanwhile. */
export function ConflictList() {
  const site = useDocument((state) => state.site);
  const conflicts = conflictsOf(site.records);
  if (conflicts.length === 0) return null;
  return (
    <section aria-label="Two say different things" className="conflicts">
      <h3>
        {conflicts.length === 1 ? 'Two say different things' : `${conflicts.length} where two say different things`}
      </h3>
      {conflicts.map((conflict) => (
        <Conflict key={`${conflict.of} ${conflict.what} ${conflict.part ?? ''}`} conflict={conflict} site={site} />
      ))}
    </section>
  );
}

function Conflict({ conflict, site }: { readonly conflict: Register; readonly site: Site }) {
  const { write } = useMarks();
  const { of, part, what, heads } = conflict;
  return (
    <fieldset>
      <legend>
        {of}
        {part && what !== 'photo' && ` ${part}`}, {what}
      </legend>
      {heads.map((mark) => (
        <button
          key={`${mark.id} ${mark.by}`}
          type="button"
          onClick={() => write(`Decide ${of} ${part ?? what}`, sayingOf(mark))}
        >
          <b>Keep {whoSays(mark)}</b>
          <span>{saysWords(mark, site)}</span>
        </button>
      ))}
    </fieldset>
  );
}

/** What a mark says, to be said again in the place of all others. */
function sayingOf({ of, part, what, gone, place, from, text, photo, line, reading }: Mark) {
  return {
    of,
    what,
    ...(part !== undefined && { part }),
    ...(gone && { gone }),
    ...(place && { place }),
    ...(from && { from }),
    ...(text !== undefined && { text }),
    ...(photo && { photo }),
    ...(line && { line }),
    ...(reading && { reading }),
  };
}

function saysWords(mark: Mark, { gridlines, units }: Site): string {
  if (mark.gone) return 'taken back';
  if (mark.place) return gridlineWords(mark.place, gridlines, units);
  if (mark.reading) return readingWords(mark.reading);
  if (mark.text !== undefined) return mark.text;
  if (mark.line) return gridlineWords(mark.line.at, gridlines, units);
  return 'done';
}
