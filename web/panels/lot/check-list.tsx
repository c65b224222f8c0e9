import { useEffect, useRef } from 'react';
import { extentWords, foundWords, idleChecks, madeChecks, worstSeverity } from '../../../calc/checks/standing.ts';
import type { Check } from '../../../calc/plan-file/plan-file.ts';
import { useDocument } from '../../document/use-document.tsx';
import { SeveritySign } from '../../parts/severity-sign.tsx';

/** Every check that was made, with how much it was applied to and what it found, the worst first; what was not below. */
export function CheckList() {
  const checks = useDocument((state) => state.plan.checks);
  const notChecked = useDocument((state) => state.plan.notChecked);
  const section = useRef<HTMLElement>(null);
  useEffect(() => {
    section.current?.scrollIntoView({ block: 'nearest' });
  }, []);
  const idle = idleChecks(checks);
  return (
    <section ref={section} className="checks" aria-label="What was looked at">
      <h3>{extentWords(checks)}</h3>
      <ul className="check-rows">
        {madeChecks(checks).map((check) => (
          <Row key={check.rule} check={check} />
        ))}
      </ul>
      <h3>Not looked at</h3>
      <ul className="check-left">
        {notChecked.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      {idle.length > 0 && <p className="source">Nothing drawn for: {idle.join('; ')}.</p>}
    </section>
  );
}

function Row({ check }: { readonly check: Check }) {
  const worst = worstSeverity(check);
  return (
    <li data-rule={check.rule} data-severity={worst ?? 'pass'}>
      <SeveritySign severity={worst ?? 'pass'} />
      <span className="check-title">{check.title}</span>
      <span className="check-found">
        <b>{foundWords(check)}</b> of {check.lookedAt.toLocaleString('en-US')}
      </span>
      <span className="source">{check.source}</span>
    </li>
  );
}
