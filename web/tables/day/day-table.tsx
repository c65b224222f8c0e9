import { useEffect, useRef, useState } from 'react';
import { ChoiceField } from '../../parts/fields.tsx';
import { usePhone } from '../../parts/phone.ts';
import { Scroller } from '../../parts/scroller.tsx';
import { useTableFacts } from '../table-facts.ts';
import { DecidingDayField } from './deciding-day-field.tsx';
import { NewDay } from './new-day.tsx';
import { OneDay } from './one-day.tsx';
import './day.css';

/** Days of charging: one of them, and how to make another. */
export function DayTable() {
  const { site } = useTableFacts();
  const [wanted, setWanted] = useState<string | null>(null);
  const top = useRef<HTMLDivElement>(null);
  const isPhone = usePhone();
  // Under the board of a phone the day would begin below the screen.
  useEffect(() => {
    if (isPhone) top.current?.closest('.drawer')?.scrollIntoView();
  }, [isPhone]);
  const day = site.days.find(({ id }) => id === wanted) ?? site.days[0];
  if (day === undefined) return <NewDay onMade={setWanted} />;
  return (
    <Scroller aria-label="Day of charging" className="day-frame">
      <div className="day-whole" ref={top}>
        {site.days.length > 1 && (
          <div className="day-choice">
            <ChoiceField
              label="day"
              value={day.id}
              choices={site.days.map(({ id }) => id)}
              words={(id) => site.days.find((one) => one.id === id)?.name ?? id}
              onChange={setWanted}
            />
            <DecidingDayField days={site.days.map(({ id }) => id)} />
          </div>
        )}
        <OneDay key={day.id} day={day} />
        <details>
          <summary>Another day</summary>
          <NewDay onMade={setWanted} />
        </details>
      </div>
    </Scroller>
  );
}
