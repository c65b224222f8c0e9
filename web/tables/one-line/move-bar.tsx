import { useId, useState } from 'react';
import type { Lines } from '../../../routing/site/schema/vocabulary.ts';
import { useDocument } from '../../document/use-document.tsx';
import type { OneLineItem } from './model.ts';
import type { Target } from './target.ts';

/** Says where the chosen chargers hang, and puts them elsewhere without a drag. */
export function MoveBar({
  items,
  put,
}: {
  readonly items: readonly OneLineItem[];
  readonly put: (ids: readonly string[], over: Target) => void;
}) {
  const selection = useDocument((state) => state.selection);
  const chargers = useDocument((state) => state.site.chargers);
  const [wanted, setWanted] = useState<string | null>(null);
  const [lines, setLines] = useState('');
  const [panelField, linesField] = [useId(), useId()];
  const chosen = new Set(selection.flatMap(({ list, id }) => (list === 'drops' || list === 'chargers' ? [id] : [])));
  const mine = chosen.size === 0 ? [] : chargers.filter(({ id, drop }) => chosen.has(drop) || chosen.has(id));
  const [first] = mine;
  if (!first)
    return (
      <p className="move-bar quiet">
        Drag a charger to another board or other lines, or pick it up with Space. Volts and amperes: every charger at
        once, at its rating or as managed.
      </p>
    );
  const all = items.flatMap(flat);
  const panel = all.some(({ id }) => id === wanted) ? wanted! : first.from;
  const pairs = all.find(({ id }) => id === panel)?.pairs ?? [];
  const own = pairs.find((pair) => pair === lines);
  return (
    <form
      className="move-bar"
      aria-label="Feed from"
      onSubmit={(event) => {
        event.preventDefault();
        put(
          mine.map(({ id }) => id),
          own === undefined ? { panel } : { panel, lines: own as Lines },
        );
        setWanted(null);
        setLines('');
      }}
    >
      <b>{mine.length === 1 ? first.id : `${mine.length} chargers`}</b>
      <label htmlFor={panelField}>from</label>
      <select id={panelField} value={panel} onChange={({ target }) => setWanted(target.value)}>
        {all.map(({ id }) => (
          <option key={id}>{id}</option>
        ))}
      </select>
      <label htmlFor={linesField}>on</label>
      <select id={linesField} value={own ?? ''} onChange={({ target }) => setLines(target.value)}>
        <option value="">{panel === first.from ? 'its lines' : 'lines that balance'}</option>
        {pairs.map((pair) => (
          <option key={pair}>{pair}</option>
        ))}
      </select>
      <button type="submit" disabled={panel === first.from && own === undefined}>
        Move
      </button>
    </form>
  );
}

const flat = (item: OneLineItem): readonly OneLineItem[] => [item, ...item.children.flatMap(flat)];
