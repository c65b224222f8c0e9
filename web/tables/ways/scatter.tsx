import { useId } from 'react';
import type { PriceList } from '../../../calc/prices/price-list.ts';
import { FIGURES } from '../../../calc/study/figures.ts';
import type { StudyWay } from '../../../calc/study/shape.ts';
import { shownFigure } from '../../../calc/study/shown-figure.ts';
import { marksUpTo } from '../../../calc/words/axis-marks.ts';
import { usePhone } from '../../parts/phone.ts';
import { priceWords } from '../../words/dollars.ts';

/** What a car gets, or how many chargers run at full rate: up the picture. */
export type ScatterUp = 'energy' | 'fullRate';

interface ScatterProps {
  readonly ways: readonly StudyWay[];
  readonly unbeaten: ReadonlySet<string>;
  readonly up: ScatterUp;
  readonly list: PriceList;
  readonly chosen: string | null;
  readonly onChoose: (id: string) => void;
  /** The chosen one is opened. */
  readonly onOpen: (id: string) => void;
}

const HIGH = 200;
const EDGE = { left: 44, right: 26, top: 12, bottom: 40 } as const;

/**
 * Price across, what cars get up: a dot a way, those that nothing beats filled. Arrows go from one to the next by price,
 * Enter opens; the table under it has the figures.
 */
export function Scatter({ ways, unbeaten, up, list, chosen, onChoose, onOpen }: ScatterProps) {
  const own = useId();
  const wide = usePhone() ? 340 : 620;
  const dots = ways
    .flatMap(({ id, name, figures }) => {
      const [price, gets] = [figures.price, figures[up]];
      return price === null || gets === null ? [] : [{ id, name, price, gets }];
    })
    .toSorted((a, b) => a.price - b.price || a.gets - b.gets);
  const most = {
    price: Math.max(1, ...dots.map(({ price }) => price)) * 1.05,
    gets: Math.max(1, ...dots.map(({ gets }) => gets)) * 1.1,
  };
  const x = (price: number): number => EDGE.left + ((wide - EDGE.left - EDGE.right) * price) / most.price;
  const y = (gets: number): number => HIGH - EDGE.bottom - ((HIGH - EDGE.bottom - EDGE.top) * gets) / most.gets;
  const at = dots.findIndex(({ id }) => id === chosen);
  const go = (place: number): void => {
    const dot = dots[Math.min(dots.length - 1, Math.max(0, place))];
    if (dot) onChoose(dot.id);
  };
  const KEYS: Readonly<Record<string, () => void>> = {
    ArrowRight: () => go(at + 1),
    ArrowUp: () => go(at + 1),
    ArrowLeft: () => go(at < 0 ? 0 : at - 1),
    ArrowDown: () => go(at < 0 ? 0 : at - 1),
    Home: () => go(0),
    End: () => go(dots.length - 1),
    Enter: () => {
      if (at >= 0) onOpen(dots[at]!.id);
    },
  };
  const nearest = (event: React.PointerEvent<SVGSVGElement>): void => {
    const { left, top, width } = event.currentTarget.getBoundingClientRect();
    const scale = wide / width;
    const [px, py] = [(event.clientX - left) * scale, (event.clientY - top) * scale];
    const far = ({ price, gets }: (typeof dots)[number]): number => Math.hypot(x(price) - px, y(gets) - py);
    const [dot] = dots.toSorted((a, b) => far(a) - far(b));
    if (dot) onChoose(dot.id);
  };
  const gets = FIGURES[up].name;
  return (
    <div
      className="way-scatter"
      role="listbox"
      tabIndex={0}
      aria-label={`Price against ${gets}, ${dots.length} ways by price. The table has all figures.`}
      aria-activedescendant={at >= 0 ? `${own}${chosen}` : undefined}
      onKeyDown={(event) => {
        const does = KEYS[event.key];
        if (!does || event.ctrlKey || event.metaKey || event.altKey) return;
        event.preventDefault();
        does();
      }}
    >
      <svg viewBox={`0 0 ${wide} ${HIGH}`} role="presentation" onPointerUp={nearest}>
        {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: lines and figures of the axes take no focus */}
        <g aria-hidden="true">
          {marksUpTo(most.gets).map((value) => (
            <g key={value}>
              <line className="way-rule" x1={EDGE.left} x2={wide - EDGE.right} y1={y(value)} y2={y(value)} />
              <text className="way-mark" x={EDGE.left - 6} y={y(value) + 4} textAnchor="end">
                {value}
              </text>
            </g>
          ))}
          {marksUpTo(most.price).map((value) => (
            <text key={value} className="way-mark" x={x(value)} y={HIGH - EDGE.bottom + 15} textAnchor="middle">
              {priceWords(value, { name: list.name }).replace(/\.00$/, '')}
            </text>
          ))}
          <line className="way-axis" x1={EDGE.left} x2={wide - EDGE.right} y1={y(0)} y2={y(0)} />
          <line className="way-axis" x1={EDGE.left} x2={EDGE.left} y1={EDGE.top} y2={y(0)} />
          <text className="way-mark" x={(EDGE.left + wide - EDGE.right) / 2} y={HIGH - 6} textAnchor="middle">
            price
          </text>
        </g>
        {dots.map(({ id, name, price, gets: value }) => (
          <g
            key={id}
            id={`${own}${id}`}
            role="option"
            aria-selected={id === chosen}
            aria-label={`${id}, ${name}: ${priceWords(price, list)}, ${gets} ${shownFigure(up, value, 'ft')}${unbeaten.has(id) ? ', nothing beats it' : ''}`}
          >
            <circle
              className={unbeaten.has(id) ? 'way-dot way-best' : 'way-dot'}
              data-chosen={id === chosen || undefined}
              cx={x(price)}
              cy={y(value)}
              r={id === chosen ? 7 : 5}
            />
            {id === chosen && (
              <text className="way-mark way-name" x={x(price)} y={y(value) - 11} textAnchor="middle">
                {id}
              </text>
            )}
          </g>
        ))}
      </svg>
      <p className="quiet small way-key" aria-hidden="true">
        Up: {gets}. Filled: nothing beats it on all counts.
      </p>
    </div>
  );
}
