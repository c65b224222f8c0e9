import { useEffect, useRef, useState } from 'react';
import { ANEW_WHATS, type AnewWhat } from '../../../calc/propose/anew/propose-anew.ts';
import type { Asked } from '../../../calc/propose/anew/scope.ts';
import { counted } from '../../../routing/words/counted.ts';
import type { Ref } from '../../document/change/element-lists.ts';
import { editBetween } from '../../document/edits/edit-between.ts';
import { inWords } from '../../document/edits/in-words.ts';
import { usePrices } from '../../document/files/price-store.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { ChoiceField, NumberField, TextField } from '../../parts/fields.tsx';
import { askPart, type PartOutcome } from '../../proposal/ask-part.ts';
import { priceWords } from '../../words/dollars.ts';

const WHAT: Readonly<Record<AnewWhat, string>> = {
  all: 'drops, and the ways to them',
  drops: 'drops alone',
  raceways: 'the ways alone',
};

/** A search ends with the best that it has after so long. */
const MOST_SECONDS = 600;

/** Has a part of the lot proposed anew; all else stays as it is drawn. */
export function AnewForm() {
  const document = useDocumentStore();
  const prices = usePrices((state) => state.list);
  const selection = useDocument((state) => state.selection);
  const [what, setWhat] = useState<AnewWhat>('all');
  const [place, setPlace] = useState(0);
  const [cordsADrop, setCords] = useState(1);
  const [keep, setKeep] = useState('');
  const [isDoing, setDoing] = useState(false);
  const [said, setSaid] = useState<readonly string[]>([]);
  const stop = useRef<() => void>(() => {});
  useEffect(() => () => stop.current(), []);
  const scopes = scopesOf(selection);
  const scope = scopes[place] ?? scopes[0];
  if (!scope) return null;

  const heard = (file: ReturnType<typeof document.getState>['file'], made: PartOutcome): void => {
    setDoing(false);
    const fault =
      made.kind === 'none'
        ? made.says
        : document.getState().committed().file === file
          ? null
          : 'The drawing was changed meanwhile, so nothing was drawn in. Ask again.';
    if (fault !== null) setSaid([fault]);
    if (fault !== null || made.kind !== 'anew') return;
    const { before, after } = made;
    const fails = (count: number): string =>
      count === 0 ? 'nothing fails' : counted(count, 'finding fails', 'findings fail');
    const edit = editBetween(file, made.file, `Propose anew ${scope.words}`);
    setSaid([
      ...(edit.steps.length === 0 ? ['It comes out as it is drawn: nothing changes.'] : made.says),
      `The lot came to ${priceWords(before.price, prices)}, ${fails(before.fails)}; now ${priceWords(after.price, prices)}, ${fails(after.fails)}.`,
    ]);
    void document.getState().applyLarge(edit);
  };
  const ask = (): void => {
    const { file } = document.getState().committed();
    setSaid([]);
    setDoing(true);
    const kept = keep.split(',').map((id) => id.trim());
    const wish = { kind: 'anew', what, asked: scope.asked, keep: kept.filter(Boolean), cordsADrop } as const;
    stop.current = askPart({ ...wish, file, prices, seconds: MOST_SECONDS }, (made) => heard(file, made));
  };
  const halt = (): void => {
    stop.current();
    setDoing(false);
  };
  return (
    <section className="fields" aria-label="Propose anew">
      {scopes.length > 1 && (
        <ChoiceField
          label="for"
          value={String(scopes.indexOf(scope))}
          choices={scopes.map((_, i) => String(i))}
          words={(each) => scopes[Number(each)]!.words}
          onChange={(each) => setPlace(Number(each))}
        />
      )}
      <ChoiceField label="anew" value={what} choices={ANEW_WHATS} words={(each) => WHAT[each]} onChange={setWhat} />
      {what !== 'raceways' && (
        <NumberField label="cords a drop" unit="" whole least={1} most={6} value={cordsADrop} onChange={setCords} />
      )}
      <TextField label="what stays" value={keep} onChange={setKeep} />
      <p>
        {isDoing ? (
          <>
            <span role="status">
              Being worked out <progress aria-label="Being worked out" />
            </span>{' '}
            <button type="button" className="small-act" onClick={halt}>
              Stop
            </button>
          </>
        ) : (
          <button type="button" className="small-act" onClick={ask}>
            Propose anew {scope.words}
          </button>
        )}
      </p>
      {said.map((one) => (
        <p key={one}>{one}</p>
      ))}
      <p className="quiet">
        All else stays as it is drawn, and so do names separated by commas under “what stays”, panels, pedestals and
        what was recorded as built. Undo takes it back in one step.
      </p>
    </section>
  );
}

interface NamedScope {
  readonly words: string;
  readonly asked: Asked;
}

/** What of the lot a selection may mean. */
function scopesOf(selection: readonly Ref[]): readonly NamedScope[] {
  const own = selection.filter(({ list }) => list === 'drops' || list === 'chargers' || list === 'stalls');
  const panels = selection.filter(({ list }) => list === 'equipment');
  const ids = [...new Set(own.map(({ id }) => id))];
  const [first] = ids;
  return [
    ...(first === undefined
      ? []
      : [
          { words: ids.length === 1 ? first : inWords(own), asked: { kind: 'only', ids } as const },
          { words: `the row of ${first}`, asked: { kind: 'row', of: first } as const },
        ]),
    ...panels.map(({ id }) => ({ words: `what ${id} feeds`, asked: { kind: 'panel', id } as const })),
  ];
}
