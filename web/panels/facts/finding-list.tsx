import { useState } from 'react';
import { type Finding, GRADES } from '../../../routing/site/rules/finding.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { usePageActions } from '../../page-state/page-actions.ts';
import { SeveritySign } from '../../parts/severity-sign.tsx';
import { type FindingsByCause, findingGroups } from '../../words/finding-groups.ts';
import { refsAbout } from '../../words/refs.ts';

const FIRST_PLACES = 8;

/** What the plan has to say, grouped by cause. Choosing a place selects it and brings it into view. */
export function FindingList() {
  const findings = useDocument((state) => state.plan.findings);
  const groups = findingGroups(findings);
  return (
    <section className="findings" aria-label="Findings">
      {groups.map((group) =>
        group.findings.length === 1 ? (
          <Single key={group.key} finding={group.findings[0]!} />
        ) : (
          <Several key={group.key} group={group} />
        ),
      )}
    </section>
  );
}

function Single({ finding }: { readonly finding: Finding }) {
  return (
    <article className="finding" data-severity={finding.severity} data-rule={finding.rule}>
      <Place finding={finding} lead />
      <Source finding={finding} />
    </article>
  );
}

function Several({ group }: { readonly group: FindingsByCause }) {
  const [all, setAll] = useState(false);
  const { severity, rule, heading, findings } = group;
  const shown = all ? findings : findings.slice(0, FIRST_PLACES);
  const [first] = findings;
  return (
    <article className="finding" data-severity={severity} data-rule={rule}>
      <details open={severity === 'fail' && findings.length <= 3}>
        <summary>
          <SeveritySign severity={severity} />
          <span>
            <b>{GRADES[severity]}.</b> {heading}: <b>{findings.length} places</b>
          </span>
        </summary>
        <ul>
          {shown.map((finding) => (
            <li key={`${finding.about.join(' ')} ${finding.says}`}>
              <Place finding={finding} />
            </li>
          ))}
        </ul>
        {findings.length > shown.length && (
          <button type="button" className="plain" onClick={() => setAll(true)}>
            Show the other {findings.length - shown.length}
          </button>
        )}
      </details>
      {first && <Source finding={first} />}
    </article>
  );
}

function Place({ finding, lead = false }: { readonly finding: Finding; readonly lead?: boolean }) {
  const document = useDocumentStore();
  const { reveal } = usePageActions();
  const { says, severity, about } = finding;
  const words = (
    <>
      {lead && <SeveritySign severity={finding.rule === 'sound' ? 'pass' : severity} />}
      <span>
        {lead && <b>{finding.rule === 'sound' ? 'Sound' : GRADES[severity]}. </b>}
        {says}
      </span>
    </>
  );
  if (about.length === 0) return <p className="place">{words}</p>;
  return (
    <button
      type="button"
      className="place"
      onClick={() => {
        const { file, plan } = document.getState();
        reveal(refsAbout(file, plan, about));
      }}
    >
      {words}
    </button>
  );
}

const Source = ({ finding }: { readonly finding: Finding }) => <p className="source">{finding.source}</p>;
