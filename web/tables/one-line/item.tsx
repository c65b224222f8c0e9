import type { CSSProperties, ReactNode } from 'react';
import { EQUIPMENT_WORDS } from '../../../routing/site/schema/vocabulary.ts';
import type { Ref } from '../../document/change/element-lists.ts';
import { SeveritySign } from '../../parts/severity-sign.tsx';
import type { MovingHand } from '../use-moving.ts';
import { AXIS, COLUMN, groupKey, type PlacedItem, shownOf } from './layout.ts';
import type { DeviceMark, FeederPart } from './model.ts';
import { BreakerSymbol, EquipmentSymbol } from './symbol.tsx';
import { sameTarget, type Target } from './target.ts';

/** What an item has to know of the page around it. */
export interface ItemWorld {
  readonly isChosen: (ref: Ref) => boolean;
  readonly choose: (ref: Ref, adds: boolean) => void;
  /** The stop that Tab leads to, by its key. */
  readonly active: string;
  readonly hand: MovingHand<Target>;
  readonly opened: ReadonlySet<string>;
  readonly toggle: (group: string) => void;
  /** The chargers that go along when one is taken. */
  readonly takenWith: (charger: string) => readonly string[];
}

const box = (left: number, top: number, width: number, height: number): CSSProperties => ({ left, top, width, height });

/** The lines of an item: into it, through it, and the bus over what it feeds. */
export function ItemLines({
  placed,
  from,
  to,
}: {
  readonly placed: PlacedItem;
  readonly from: number;
  readonly to: number;
}) {
  const { item, x, y, symbolY, bus } = placed;
  const [left, right] = bus === null ? [0, 0] : [Math.max(bus.from, from), Math.min(bus.to, to)];
  return (
    <>
      {item.feeder !== null && (
        <i className="ol-line" data-existing={item.feeder.existing} style={box(x + AXIS - 1, y, 2, symbolY - y)} />
      )}
      {bus !== null && (
        <>
          <i className="ol-line" style={box(x + AXIS - 1, symbolY + 47, 2, bus.y - symbolY - 47)} />
          {right > left && <i className="ol-line ol-bus" style={box(left - 1, bus.y - 2, right - left + 2, 4)} />}
        </>
      )}
    </>
  );
}

/** A piece of equipment with its feeder, its chargers by their lines, and its loads. */
export function Item({ placed, world }: { readonly placed: PlacedItem; readonly world: ItemWorld }) {
  const { item, x, y, symbolY, height } = placed;
  const { hand } = world;
  const isOver = sameTarget(hand.moving?.over ?? null, { panel: item.id });
  const empty =
    hand.moving === null ? [] : item.pairs.filter((pair) => !item.groups.some(({ lines }) => lines === pair));
  return (
    <section
      className="ol-item"
      aria-label={`${item.id}, ${EQUIPMENT_WORDS[item.kind]}`}
      data-panel={item.id}
      data-over={isOver}
      style={box(x, y, COLUMN - 12, height)}
    >
      {item.feeder && <FeederLine feeder={item.feeder} height={symbolY - y} world={world} />}
      <Stop className="ol-equipment" of={{ list: 'equipment', id: item.id }} world={world} target={{ panel: item.id }}>
        <EquipmentSymbol kind={item.kind} name={item.id} />
        <span className="ol-says">
          <b>
            {item.worst && <SeveritySign severity={item.worst} />} {item.id}{' '}
            <span className="heard">{EQUIPMENT_WORDS[item.kind]}</span>
          </b>
          {item.says.map((line) => (
            <span key={line}>{line}</span>
          ))}
        </span>
      </Stop>
      {item.groups.map((group) => {
        const key = groupKey(item.id, group);
        const shown = shownOf(item.id, group, world.opened);
        const target = { panel: item.id, lines: group.lines };
        return (
          // biome-ignore lint/a11y/useSemanticElements: a fieldset would be a form's
          <div
            key={key}
            className="ol-group"
            role="group"
            aria-label={`${item.id} ${group.lines}, ${group.chargers.length} chargers`}
            data-lines={group.lines}
            data-over={sameTarget(hand.moving?.over ?? null, target)}
          >
            <GroupHead panel={item.id} lines={group.lines} count={group.chargers.length} />
            {shown.map((charger) => (
              <Stop
                key={charger.id}
                className="ol-chip"
                name={`${charger.id} on ${group.lines} of ${item.id}`}
                of={{ list: 'drops', id: charger.drop }}
                world={world}
                charger={charger.id}
              >
                {charger.id}
              </Stop>
            ))}
            {group.chargers.length > shown.length || world.opened.has(key) ? (
              <button type="button" className="ol-more" tabIndex={-1} data-stop="" onClick={() => world.toggle(key)}>
                {world.opened.has(key) ? 'fewer' : `and ${group.chargers.length - shown.length} more`}
              </button>
            ) : null}
          </div>
        );
      })}
      {empty.length > 0 && item.feeder !== null && (
        <div className="ol-empty">
          {empty.map((lines) => (
            <span
              key={lines}
              data-lines={lines}
              data-target={`${item.id} ${lines}`}
              data-over={sameTarget(hand.moving?.over ?? null, { panel: item.id, lines })}
            >
              {lines}
            </span>
          ))}
        </div>
      )}
      {item.loads.length > 0 && <p className="ol-head">Loads</p>}
      {item.loads.map(({ id, name, lines }) => (
        <Stop key={id} className="ol-load" of={{ list: 'loads', id }} world={world}>
          {id} {name} <span className="quiet">{lines}</span>
        </Stop>
      ))}
    </section>
  );
}

const GroupHead = ({
  panel,
  lines,
  count,
}: {
  readonly panel: string;
  readonly lines: string;
  readonly count: number;
}) => (
  <p className="ol-head" data-target={`${panel} ${lines}`}>
    {lines} <span className="quiet">{count}</span>
  </p>
);

function FeederLine({
  feeder,
  height,
  world,
}: {
  readonly feeder: FeederPart;
  readonly height: number;
  readonly world: ItemWorld;
}) {
  return (
    <Stop className="ol-feeder" of={{ list: 'feeders', id: feeder.id }} world={world} style={{ height }}>
      {feeder.out && <BreakerSymbol missing={feeder.out.missing} />}
      <span className="ol-says" data-existing={feeder.existing}>
        <b>
          <span className="heard">feeder </span>
          {feeder.worst && <SeveritySign severity={feeder.worst} />} {feeder.id} {deviceWords(feeder.out ?? feeder.in)}
        </b>
        {feeder.says.map((line) => (
          <span key={line}>{line}</span>
        ))}
      </span>
      {feeder.in && (
        <span className="ol-in">
          <BreakerSymbol missing={feeder.in.missing} />
        </span>
      )}
    </Stop>
  );
}

const deviceWords = (mark: DeviceMark | null): string =>
  mark === null || mark.amps === null ? 'no device' : `${mark.amps} A ${mark.poles}P`;

interface StopProps {
  readonly className: string;
  /** Where what stands there does not say it all. */
  readonly name?: string;
  readonly of: Ref;
  readonly world: ItemWorld;
  readonly charger?: string;
  readonly target?: Target;
  readonly style?: CSSProperties;
  readonly children: ReactNode;
}

export const stopKey = ({ list, id }: Ref, charger?: string): string => `${list} ${charger ?? id}`;

/** Something of the one-line that is chosen, and reached with the arrows. */
function Stop({ className, name, of, world, charger, target, style, children }: StopProps) {
  const chosen = world.isChosen(of) || (charger !== undefined && world.isChosen({ list: 'chargers', id: charger }));
  const { hand } = world;
  return (
    <button
      type="button"
      className={className}
      aria-label={name}
      aria-pressed={chosen}
      tabIndex={world.active === stopKey(of, charger) ? 0 : -1}
      style={style}
      data-stop={stopKey(of, charger)}
      data-charger={charger}
      data-target={target?.panel}
      data-held={charger !== undefined && hand.moving?.ids.includes(charger)}
      onPointerDown={charger === undefined ? undefined : (event) => hand.press(event, world.takenWith(charger))}
      onClick={({ shiftKey, ctrlKey, metaKey }) => {
        if (!hand.hasDragged()) world.choose(of, shiftKey || ctrlKey || metaKey);
      }}
    >
      {children}
    </button>
  );
}
