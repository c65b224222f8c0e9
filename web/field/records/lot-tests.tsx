import { useMemo } from 'react';
import { commissioning, openTests } from '../../../calc/field/commissioning/commissioning.ts';
import { GROUP_WORDS } from '../../../calc/field/commissioning/measures.ts';
import { useDocument } from '../../document/use-document.tsx';
import { Fact, Facts } from '../../panels/facts/facts.tsx';

/** Rows that are listed: the rest are told by their number. */
const MOST = 20;

/** The tests of the whole lot: how many pass, and what is open because it failed or is to be decided. */
export function LotTests() {
  const site = useDocument((state) => state.site);
  const plan = useDocument((state) => state.plan);
  const sheets = useMemo(() => commissioning(site, plan), [site, plan]);
  const rows = sheets.flatMap((sheet) => sheet.rows).filter(({ standing }) => standing !== 'not asked');
  const open = openTests(sheets);
  const told = open.filter(({ standing }) => standing !== 'not measured');
  return (
    <section aria-label="Tests of the lot">
      <h3>Tests of the lot</h3>
      <Facts>
        <Fact name="pass">
          {rows.filter(({ standing }) => standing === 'passes').length} of {rows.length}
        </Fact>
        <Fact name="open">
          {told.length === 0
            ? `none failed, ${open.length} not measured`
            : `${told.length} failed or to be decided, ${open.length - told.length} not measured`}
        </Fact>
      </Facts>
      {told.length > 0 && (
        <ul className="tests-open">
          {told.slice(0, MOST).map(({ of, measure, standing, says }) => (
            <li key={`${of} ${measure.id}`}>
              {of}, {GROUP_WORDS[measure.group].toLowerCase()}, {measure.name}: {standing}
              {says && `, ${says}`}
            </li>
          ))}
          {told.length > MOST && <li>and {told.length - MOST} more: the commissioning sheets have them all</li>}
        </ul>
      )}
    </section>
  );
}
