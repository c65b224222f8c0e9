import { useMemo, useState } from 'react';
import { alternativeOf } from '../../calc/plan/compared/alternative.ts';
import { type Alternative, type ComparedFact, comparison } from '../../calc/plan/compared/comparison.ts';
import { SUMMED_LENGTHS } from '../../calc/takeoff/totals.ts';
import { printTotal } from '../../routing/site/numbers/feet-inches.ts';
import type { Units } from '../../routing/site/schema/vocabulary.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { usePrices } from '../document/files/price-store.ts';
import type { KeptSite } from '../document/keeping/kept-list/kept-work.ts';
import { useDocument } from '../document/use-document.tsx';
import { usePageActions } from '../page-state/page-actions.ts';
import { usePage } from '../page-state/page-store.ts';
import { type ListColumn, WindowedTable } from '../parts/windowed-table.tsx';
import { priceWords } from '../words/dollars.ts';
import { nearestInch } from '../words/lengths.ts';
import { siteLabels } from '../words/site-labels.ts';
import { ChangesSince } from './changes-since.tsx';
import { DecidingDayField } from './day/deciding-day-field.tsx';
import { useOtherSites } from './other-sites.ts';

/** What a figure counts, where its name alone does not say. */
const SAYS: ReadonlyMap<string, string> = new Map(Object.values(SUMMED_LENGTHS).map(({ name, says }) => [name, says]));

/** Besides the open site. */
const MOST_OTHERS = 5;

/** The open site beside others that this browser keeps: what differs first. */
export function CompareTable() {
  const site = useDocument((state) => state.site);
  const name = useDocument((state) => state.name);
  const list = usePrices((state) => state.list);
  const { branch } = usePageActions();
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const { sites, files } = useOtherSites(chosen);
  const labels = useMemo(() => siteLabels(sites, Date.now()), [sites]);
  const others = useMemo(
    () =>
      chosen.flatMap((doc): (Alternative & { readonly doc: string })[] => {
        const [file, label] = [files.get(doc), labels.get(doc)];
        return file && label !== undefined ? [{ doc, ...alternativeOf(label, toSite(file), list) }] : [];
      }),
    [chosen, files, labels, list],
  );
  const open = useMemo(() => alternativeOf(`${name} (open)`, site, list), [name, site, list]);
  const alternatives = [open, ...others];
  const decidingDay = usePage((state) => state.decidingDay);
  const days = [...new Set(alternatives.flatMap((one) => one.site.days.map(({ id }) => id)))];
  const toggle = ({ doc }: KeptSite): void =>
    setChosen(chosen.includes(doc) ? chosen.filter((one) => one !== doc) : [...chosen, doc]);
  return (
    <>
      <div className="compare-choice">
        <button type="button" onClick={() => void branch()}>
          Branch the open site into an alternative
        </button>
        {sites.length > 0 && <span>Beside it:</span>}
        {sites.map((kept) => (
          <label key={kept.doc}>
            <input
              type="checkbox"
              checked={chosen.includes(kept.doc)}
              disabled={others.length >= MOST_OTHERS && !chosen.includes(kept.doc)}
              onChange={() => toggle(kept)}
            />
            {labels.get(kept.doc)}
          </label>
        ))}
        <DecidingDayField days={days} />
      </div>
      {others.map((other) => (
        <ChangesSince key={other.doc} before={other} after={open} />
      ))}
      <WindowedTable
        name="Alternatives"
        rows={comparison(alternatives, decidingDay)}
        columns={columnsFor(alternatives, site.units)}
        keyOf={({ fact }) => fact}
        stateOf={({ differs }) => (differs ? 'differs' : undefined)}
      />
    </>
  );
}

const columnsFor = (alternatives: readonly Alternative[], units: Units): readonly ListColumn<ComparedFact>[] => [
  { head: 'figure', cell: ({ fact }) => <span title={SAYS.get(fact)}>{fact}</span> },
  ...alternatives.map(({ name }, i) => ({
    head: alternatives.findIndex((other) => other.name === name) === i ? name : `${name} ${i + 1}`,
    numeric: true,
    cell: (fact: ComparedFact) => <Value fact={fact} i={i} units={units} />,
  })),
];

/** A value; the best of those that differ is marked with a word as well as its weight. */
function Value({ fact, i, units }: { readonly fact: ComparedFact; readonly i: number; readonly units: Units }) {
  const list = usePrices((state) => state.list);
  const value = fact.values[i] ?? null;
  if (value === null) return <span className="quiet">none</span>;
  const words =
    fact.unit === 'ft'
      ? fact.isTotal
        ? printTotal(value, units)
        : nearestInch(value, units)
      : fact.unit === 'dollars'
        ? priceWords(value, list)
        : `${Number(value.toFixed(2)).toLocaleString('en-US')}${fact.unit === '%' ? '' : ' '}${fact.unit}`;
  return isBest(fact, value) ? (
    <strong>
      {words} <span className="quiet">best</span>
    </strong>
  ) : (
    words
  );
}

function isBest({ values, better, differs }: ComparedFact, value: number): boolean {
  if (!differs || better === null) return false;
  const known = values.filter((one): one is number => one !== null);
  return value === (better === 'less' ? Math.min(...known) : Math.max(...known));
}
