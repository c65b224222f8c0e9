import { type KeyboardEvent, useId, useRef, useState } from 'react';
import { designOf } from '../../../calc/branches/design.ts';
import { type PanelCard, panelCards } from '../../../calc/supply/panels/panel-card.ts';
import type { PanelCircuit } from '../../../calc/supply/panels/panel-schedule.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import type { Edit } from '../../document/change/edit.ts';
import { listOf, type Ref } from '../../document/change/element-lists.ts';
import { issuePanel, letGoOfPanel, moveCircuit, spacesFrom } from '../../document/edits/charging/issue.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { usePageActions } from '../../page-state/page-actions.ts';
import { Scroller } from '../../parts/scroller.tsx';
import { refsOf } from '../../words/refs.ts';
import { useTableFacts } from '../table-facts.ts';
import { type MovingHand, useMoving } from '../use-moving.ts';
import { PanelSums } from './panel-sums.tsx';
import { type CellWorld, ScheduleRow } from './schedule-row.tsx';
import '../moving.css';
import './panels.css';

const spaceOf = (element: Element | null): number | null => {
  const space = element?.closest<HTMLElement>('[data-space]')?.dataset.space;
  return space === undefined ? null : Number(space);
};

/**
 * The schedule of a panel as its door card has it, odd spaces on the left and even on the right. A circuit is moved by
 * hand or by keys to other spaces, where later plans keep it.
 */
export function Panels() {
  const { site, plan } = useTableFacts();
  const document = useDocumentStore();
  const { reveal } = usePageActions();
  const selection = useDocument((state) => state.selection);
  const frame = useRef<HTMLElement>(null);
  const choice = useId();
  const [wanted, setWanted] = useState<string | null>(null);
  const cards = panelCards(site, plan.devices, designOf(site.rules).tables);
  const chosen = selection.find(({ list }) => list === 'equipment')?.id;
  const cardOf = (id: string | null | undefined): PanelCard | undefined =>
    cards.find(({ schedule }) => schedule.equipment === id);
  // Until one is asked for, the first that feeds chargers: what stands ahead of it has little to show.
  const card = cardOf(chosen) ?? cardOf(wanted) ?? cardOf(site.chargers[0]?.from) ?? cards[0];
  const latest = useRef(card);
  latest.current = card;
  const hand = useMoving<number>(frame, {
    targetOf: spaceOf,
    words: (space) => `space ${space}`,
    put: ([id], space) => {
      const { file, apply } = document.getState();
      if (latest.current && id !== undefined) apply(moveCircuit(file, latest.current.schedule, id, space));
    },
  });
  if (!card) return <p className="empty quiet">No panel is drawn yet.</p>;

  const { schedule } = card;
  const [held] = hand.moving?.ids ?? [];
  const poles = schedule.circuits.find(({ id }) => id === held)?.lines.length ?? 0;
  const over = hand.moving?.over ?? null;
  const world: CellWorld = {
    isChosen: (circuit) => selection.some((ref) => isOf(ref, circuit, site.chargers)),
    choose: ({ id }) => {
      const { file, plan: now } = document.getState();
      reveal(listOf(file, id) === 'loads' ? [{ list: 'loads', id }] : refsOf(file, now, id));
    },
    hand,
    held,
    over: new Set(over === null ? [] : (spacesFrom(schedule, over, poles) ?? [])),
  };
  const isIssued = [...site.issued.circuits.values()].some(({ panel }) => panel === schedule.equipment);
  const act = (make: (file: SiteFile) => Edit): void => {
    const { file, apply } = document.getState();
    apply(make(file));
  };
  return (
    <>
      <div className="move-bar">
        <label htmlFor={choice}>Schedule of</label>
        <select
          id={choice}
          value={schedule.equipment}
          onChange={({ target }) => {
            setWanted(target.value);
            if (chosen !== undefined) reveal([{ list: 'equipment', id: target.value }]);
          }}
        >
          {cards.map((one) => (
            <option key={one.schedule.equipment}>{one.schedule.equipment}</option>
          ))}
        </select>
        <button type="button" onClick={() => act((file) => issuePanel(file, schedule))}>
          Keep every circuit where it is
        </button>
        {isIssued && (
          <button type="button" onClick={() => act((file) => letGoOfPanel(file, schedule.equipment))}>
            Lay it out anew
          </button>
        )}
        <span className="quiet">Drag a circuit to another space, or pick it up with Space. It stays there.</span>
      </div>
      <div className="panel-card">
        <Scroller
          className="table-frame"
          ref={frame}
          aria-label={`Schedule of ${schedule.equipment}`}
          data-moving={hand.moving !== null}
          onKeyDown={(event) => onKey(event, hand)}
        >
          <table className="schedule">
            <thead>
              <tr>
                {['serves', 'breaker', 'VA', 'no.', 'line', 'no.', 'VA', 'breaker', 'serves'].map((head, i) => (
                  // The heads of the two sides have the same words.
                  <th
                    key={i}
                    scope="col"
                    className={head === 'VA' || head === 'no.' ? `numeric ${head === 'VA' ? 'va' : ''}` : undefined}
                  >
                    {head}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {card.rows.map((row) => (
                <ScheduleRow key={row.left.number} row={row} world={world} />
              ))}
            </tbody>
          </table>
        </Scroller>
        <PanelSums card={card} />
      </div>
      {hand.moving?.hand && (
        <p
          className="move-held"
          style={{ left: hand.moving.hand[0] + 14, top: hand.moving.hand[1] + 10 }}
          aria-hidden="true"
        >
          {held}
          {over === null ? '' : ` to ${[...world.over].join(', ') || `${over}: no room`}`}
        </p>
      )}
    </>
  );
}

function isOf(
  { list, id }: Ref,
  circuit: PanelCircuit,
  chargers: readonly { readonly id: string; readonly drop: string }[],
): boolean {
  if (list === 'drops') return chargers.some((charger) => charger.id === circuit.id && charger.drop === id);
  return id === circuit.id;
}

/** Up and down go from circuit to circuit of a side, left and right across; a circuit that is held goes from space to space. */
function onKey(event: KeyboardEvent<HTMLElement>, hand: MovingHand<number>): void {
  const { key, currentTarget: frame, target } = event;
  const own = spaceOf(target as Element);
  const taken = (): void => {
    event.preventDefault();
    event.stopPropagation();
  };
  const step = { ArrowUp: -2, ArrowDown: 2, ArrowLeft: -1, ArrowRight: 1 }[key];
  const { moving } = hand;
  if (moving && moving.hand === null) {
    if (key === 'Enter' || key === ' ') {
      taken();
      hand.putHeld();
    } else if (step !== undefined && moving.over !== null) {
      taken();
      const next = moving.over + step;
      const cell = frame.querySelector(`[data-space="${next}"]`);
      if (!cell) return;
      cell.scrollIntoView({ block: 'nearest' });
      hand.aim(next);
    }
    return;
  }
  const { circuit } = (target as HTMLElement).dataset;
  if (key === ' ' && circuit !== undefined && own !== null) {
    taken();
    hand.pickUp([circuit], own);
  } else if (step !== undefined && own !== null) {
    for (let space = own + step; frame.querySelector(`[data-space="${space}"]`); space += step) {
      const next = frame.querySelector<HTMLElement>(`[data-space="${space}"] button`);
      if (!next) continue;
      taken();
      next.focus();
      return;
    }
  }
}
