import { useEffect, useRef } from 'react';
import type { StudyWay } from '../../../calc/study/shape.ts';
import { shownFigure } from '../../../calc/study/shown-figure.ts';
import { wayName } from '../../../calc/study/way-name.ts';
import { usePrices } from '../../document/files/price-store.ts';
import { priceWords } from '../../words/dollars.ts';
import { WayPicture } from './way-picture.tsx';

interface CardsProps {
  readonly ways: readonly StudyWay[];
  readonly unbeaten: ReadonlySet<string>;
  readonly chosen: string | null;
  readonly onChoose: (id: string) => void;
  readonly onOpen: (id: string) => void;
}

/** A card a way: its plan, what it is, what it costs and gives, and what opens it. */
export function WayCards({ ways, unbeaten, chosen, onChoose, onOpen }: CardsProps) {
  return (
    <ul className="way-cards" aria-label="Plans of the ways">
      {ways.map((way) => (
        <Card
          key={way.id}
          way={way}
          isUnbeaten={unbeaten.has(way.id)}
          isChosen={way.id === chosen}
          onChoose={onChoose}
          onOpen={onOpen}
        />
      ))}
    </ul>
  );
}

interface CardProps extends Pick<CardsProps, 'onChoose' | 'onOpen'> {
  readonly way: StudyWay;
  readonly isUnbeaten: boolean;
  readonly isChosen: boolean;
}

function Card({ way, isUnbeaten, isChosen, onChoose, onOpen }: CardProps) {
  const { id, figures, forced, says, file } = way;
  const list = usePrices((state) => state.list);
  const card = useRef<HTMLLIElement>(null);
  useEffect(() => {
    if (isChosen) card.current?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }, [isChosen]);
  const { fullRate, energy } = figures;
  return (
    <li className="way-card" ref={card} data-chosen={isChosen || undefined}>
      <WayPicture file={file} />
      <div className="way-words">
        <h4>
          <button type="button" className="link" aria-pressed={isChosen} onClick={() => onChoose(id)}>
            {id}
          </button>
          {isUnbeaten && <span className="way-flag">nothing beats it</span>}
        </h4>
        <p>{wayName(way)}</p>
        <p>
          <strong>{figures.price === null ? 'not priced' : priceWords(figures.price, list)}</strong>
          {energy !== null && `; a car gets ${shownFigure('energy', energy, file.units)}`}
          {fullRate !== null && `; ${fullRate} at full rate`}
        </p>
        {forced.length > 0 && (
          <p className="way-forced">
            {forced.length} {forced.length === 1 ? 'finding fails' : 'findings fail'}: {forced[0]!.by}.
          </p>
        )}
        {says.length > 0 && (
          <details className="why">
            <summary>
              What it asks for<span className="heard"> of {id}</span>
            </summary>
            {says.map((one) => (
              <p key={one}>{one}</p>
            ))}
          </details>
        )}
        <button type="button" className="small-act" onClick={() => onOpen(id)}>
          Open it<span className="heard"> {id}</span>
        </button>
      </div>
    </li>
  );
}
