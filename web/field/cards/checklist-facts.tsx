import '../records/handover.css';
import { type ChecklistLine, checklistOf } from '../../../calc/field/checklist/checklist.ts';
import { valueIn } from '../../../calc/field/checklist/recorded.ts';
import type { Units } from '../../../routing/site/schema/vocabulary.ts';
import { useDocument } from '../../document/use-document.tsx';
import { TextField } from '../../parts/fields.tsx';
import { useMarks } from '../records/use-marks.ts';

/** The checklist of some things: what is expected by which rule, and where a value or what is seen is written down. */
export function ChecklistFacts({ ids }: { readonly ids: readonly string[] }) {
  const site = useDocument((state) => state.site);
  const plan = useDocument((state) => state.plan);
  const own = checklistOf(site, plan).filter(({ of, expected }) => ids.includes(of) && expected?.kind !== 'step');
  if (own.length === 0) return null;
  const open = own.filter(({ state }) => state === 'open').length;
  return (
    <section className="checklist" aria-label={`Checklist of ${ids[0]}`}>
      <h3>Checklist, {open === 0 ? 'all recorded' : `${open} of ${own.length} open`}</h3>
      {own.map((line) => (
        <Line key={line.key} line={line} units={site.units} />
      ))}
    </section>
  );
}

const TOLD = { open: 'open', ok: 'ok', deviates: 'deviates', noted: 'noted' } as const;

function Line({ line, units }: { readonly line: ChecklistLine; readonly units: Units }) {
  const { of, what, where, rule, expects, recorded, by, on, state, expected, mark, conflict } = line;
  const { write } = useMarks();
  const put = (text: string): void =>
    write(`Check ${of}: ${what}`, { of, ...mark, ...(text === '' ? { gone: true } : { text }) });
  const isTyped = mark.what === 'checked' && expected !== null;
  return (
    <div className="checklist-line" data-line={`${of} ${what}`}>
      <p>
        <b>
          {of} {what}
        </b>{' '}
        <span className={state === 'deviates' ? 'deviates' : 'quiet'}>{TOLD[state]}</span>
      </p>
      {expects && <p>{expects}</p>}
      <p className="quiet small">{[where, rule].filter(Boolean).join('; ')}</p>
      {recorded !== null && (
        <p>
          Recorded: {recorded}{' '}
          <span className="quiet">{[by || 'without initials', on].filter(Boolean).join(', ')}</span>
          {conflict && <span className="build-off"> two say otherwise</span>}
        </p>
      )}
      {isTyped && expected.kind === 'seen' && state !== 'ok' && (
        <button type="button" aria-label={`As planned: ${of} ${what}`} onClick={() => put('ok')}>
          As planned
        </button>
      )}
      {isTyped && (
        <div className="fields">
          <TextField
            label={expected.kind === 'seen' ? 'otherwise' : 'measured'}
            value={state === 'open' || (expected.kind === 'seen' && state === 'ok') ? '' : (recorded ?? '')}
            check={(text) => faultOf(text, line, units)}
            onChange={put}
          />
        </div>
      )}
    </div>
  );
}

/** What is wrong with what was typed for a line; null where nothing is. */
function faultOf(text: string, { expected }: ChecklistLine, units: Units): string | null {
  if (text.length > 200) return '200 letters or fewer';
  if (text === '' || !expected) return null;
  if (expected.kind === 'length')
    return valueIn(text, 'length', units) === null ? 'a length such as 9\' 0" or 2.7 m' : null;
  if (expected.kind === 'number') return valueIn(text, 'number', units) === null ? `a number, ${expected.unit}` : null;
  return null;
}
