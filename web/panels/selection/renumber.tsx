import { useMemo, useState } from 'react';
import { inOrder, type Row, type RowsOrder } from '../../../routing/propose/rows/rows-of.ts';
import type { Site } from '../../../routing/site/site.ts';
import { isIdle } from '../../document/change/edit.ts';
import type { ListName } from '../../document/change/element-lists.ts';
import { inWords } from '../../document/edits/in-words.ts';
import { type Numbering, numberAt, numberingFrom } from '../../document/edits/numbering.ts';
import { relabel, renumber } from '../../document/edits/rename.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { ChoiceField, NumberField, TextField } from '../../parts/fields.tsx';
import { count, type Numberable, numberables } from './standing.ts';

/** Numbers what is selected afresh, in order along its rows: stalls on the board or by name, all else by name. */
export function Renumber() {
  const [open, setOpen] = useState(false);
  const selection = useDocument((state) => state.selection);
  const several = selection.length > 1 || selection.some(({ list }) => list === 'stalls' || list === 'drops');
  if (!several) return null;
  return (
    <details className="arrange" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Renumber</summary>
      {open && <OfSelection />}
    </details>
  );
}

function OfSelection() {
  const site = useDocument((state) => state.site);
  const selection = useDocument((state) => state.selection);
  const kinds = useMemo(() => numberables(site, selection), [site, selection]);
  const [list, setList] = useState<ListName | null>(null);
  const kind = kinds.find((each) => each.list === list) ?? kinds[0];
  if (!kind) return <p className="quiet">There is only one of each kind, and no row of stalls.</p>;
  return (
    <section className="fields" aria-label="Renumber">
      {kinds.length > 1 && (
        <ChoiceField
          label="of these"
          value={kind.list}
          choices={kinds.map((each) => each.list)}
          words={(each) => wordsOf(each as ListName, kinds.find((other) => other.list === each)?.rows ?? [])}
          onChange={(each) => setList(each as ListName)}
        />
      )}
      <OfKind key={kind.list} kind={kind} />
    </section>
  );
}

const wordsOf = (list: ListName, rows: readonly Row[]): string => inWords(rows.flat().map((id) => ({ list, id })));

const BEGINNINGS: readonly Omit<RowsOrder, 'turning'>[] = [
  { backwards: false, fromEnd: false },
  { backwards: false, fromEnd: true },
  { backwards: true, fromEnd: false },
  { backwards: true, fromEnd: true },
];

type What = 'labels' | 'names';
type Typed = Partial<Numbering> & { readonly of: string };

function OfKind({ kind }: { readonly kind: Numberable }) {
  const document = useDocumentStore();
  const site = useDocument((state) => state.site);
  const file = useDocument((state) => state.file);
  const { list } = kind;
  const [what, setWhat] = useState<What>(list === 'stalls' ? 'labels' : 'names');
  const [whole, setWhole] = useState(count(kind.rows) < 2);
  const [turning, setTurning] = useState(false);
  const [begins, setBegins] = useState<string | null>(null);
  const [typed, setTyped] = useState<Typed | null>(null);

  const rows = whole && kind.whole ? kind.whole : kind.rows;
  const labels = useMemo(() => new Map(site.stalls.map(({ id, label }) => [id, label ?? id])), [site.stalls]);
  const shown = (id: string): string => (what === 'labels' ? (labels.get(id) ?? id) : id);
  const orders = new Map(BEGINNINGS.toReversed().map((order) => [inOrder(rows, { ...order, turning })[0]!, order]));
  const from = begins !== null && orders.has(begins) ? begins : firstInFile(site, list, [...orders.keys()]);
  const ids = inOrder(rows, { ...orders.get(from)!, turning });
  // What was typed holds for what it was typed for.
  const of = JSON.stringify([list, what, rows]);
  const numbering: Numbering = { ...numberingFrom(shown(from)), ...(typed?.of === of ? typed : {}) };
  const change = (patch: Partial<Numbering>): void => setTyped({ ...(typed?.of === of ? typed : {}), of, ...patch });

  const refs = ids.map((id) => ({ list, id }));
  const made =
    what === 'labels' ? ({ ok: true, edit: relabel(file, ids, numbering) } as const) : renumber(file, refs, numbering);
  const fresh = ids.map((_, i) => numberAt(numbering, i));
  const own = new Set(ids);
  const held = new Set(fresh);
  const twice = what === 'labels' ? site.stalls.filter(({ id, label }) => !own.has(id) && held.has(label ?? id)) : [];

  const act = (): void => {
    // What goes by its old name is not selected any more once the edit is done.
    const { selection, select, apply } = document.getState();
    if (!made.ok || !apply(made.edit) || what === 'labels') return;
    const now = new Map(ids.map((id, i) => [id, fresh[i]!]));
    select(selection.map((ref) => (ref.list === list ? { ...ref, id: now.get(ref.id) ?? ref.id } : ref)));
  };

  return (
    <>
      {list === 'stalls' && kind.whole && count(kind.rows) > 1 && (
        <ChoiceField
          label="which"
          value={whole ? 'rows' : 'these'}
          choices={['these', 'rows']}
          words={(each) => (each === 'these' ? `the ${count(kind.rows)} selected` : inTheirRows(kind.whole ?? []))}
          onChange={(each) => setWhole(each === 'rows')}
        />
      )}
      {list === 'stalls' && kind.whole && count(kind.rows) === 1 && (
        <p className="quiet">Its whole row: {count(kind.whole)} stalls.</p>
      )}
      {list === 'stalls' && (
        <ChoiceField
          label="gives"
          value={what}
          choices={['labels', 'names']}
          words={(each) => (each === 'labels' ? 'labels, as on the board' : 'names, as in the file')}
          onChange={setWhat}
        />
      )}
      <ChoiceField label="begins at" value={from} choices={[...orders.keys()]} words={shown} onChange={setBegins} />
      {rows.length > 1 && (
        <ChoiceField
          label="rows go"
          value={turning ? 'turning' : 'alike'}
          choices={['alike', 'turning']}
          words={(each) => (each === 'alike' ? 'all the same way' : 'there and back')}
          onChange={(each) => setTurning(each === 'turning')}
        />
      )}
      <TextField label="prefix" value={numbering.prefix} onChange={(prefix) => change({ prefix })} />
      <NumberField
        label="first number"
        unit=""
        whole
        least={1}
        value={numbering.first}
        onChange={(first) => change({ first })}
      />
      <NumberField label="step" unit="" whole least={1} value={numbering.step} onChange={(step) => change({ step })} />
      <NumberField
        label="digits, at least"
        unit=""
        whole
        least={1}
        most={9}
        value={numbering.width}
        onChange={(width) => change({ width })}
      />
      <p className="renumbered" data-testid="renumbered">
        {shown(ids[0]!)} becomes <b>{fresh[0]}</b>, {shown(ids.at(-1)!)} becomes <b>{fresh.at(-1)}</b>
      </p>
      {!made.ok && (
        <p className="renumbered wrong" role="alert">
          {made.says}
        </p>
      )}
      {twice.length > 0 && (
        <p className="renumbered twice" role="status">
          {twice.length === 1
            ? `Stall ${twice[0]!.id} has the label ${twice[0]!.label ?? twice[0]!.id} too, and keeps it.`
            : `${twice.length} other stalls have labels of these, and keep them.`}
        </p>
      )}
      <p className="arrange-acts">
        <button type="button" className="small-act" disabled={!made.ok || isIdle(made.edit)} onClick={act}>
          Renumber {inWords(refs)}
        </button>
      </p>
    </>
  );
}

const inTheirRows = (rows: readonly Row[]): string =>
  `${rows.length === 1 ? 'their whole row' : 'their whole rows'}, ${count(rows)}`;

/** Of some elements the one that stands first in the file. */
function firstInFile(site: Site, list: ListName, ids: readonly string[]): string {
  const all: readonly { readonly id: string }[] = site[list];
  return all.find(({ id }) => ids.includes(id))?.id ?? ids[0]!;
}
