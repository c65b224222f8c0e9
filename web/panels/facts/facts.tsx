import type { ReactNode } from 'react';
import type { Severity } from '../../../routing/site/rules/finding.ts';
import { GRADES } from '../../../routing/site/rules/finding.ts';
import { listOf } from '../../document/change/element-lists.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { usePageActions } from '../../page-state/page-actions.ts';
import { SeveritySign } from '../../parts/severity-sign.tsx';
import { refsOf } from '../../words/refs.ts';

/** Names and figures in two columns. */
export const Facts = ({ children }: { readonly children: ReactNode }) => <dl className="facts">{children}</dl>;

export const Fact = ({ name, children }: { readonly name: string; readonly children: ReactNode }) => (
  <div>
    <dt>{name}</dt>
    <dd>{children}</dd>
  </div>
);

/** The name of an element, as a way to it. */
export function Link({ id }: { readonly id: string }) {
  const document = useDocumentStore();
  const { reveal } = usePageActions();
  return (
    <button
      type="button"
      className="link"
      onClick={() => {
        const { file, plan } = document.getState();
        // A load stands nowhere on the board, but has fields of its own.
        reveal(listOf(file, id) === 'loads' ? [{ list: 'loads', id }] : refsOf(file, plan, id));
      }}
    >
      {id}
    </button>
  );
}

/** Several names in a row; past `most` the rest is a number. */
export function Links({ ids, most = 12 }: { readonly ids: readonly string[]; readonly most?: number }) {
  if (ids.length === 0) return <span className="quiet">none</span>;
  return (
    <span className="links">
      {ids.slice(0, most).map((id) => (
        <Link key={id} id={id} />
      ))}
      {ids.length > most && <span className="quiet">and {ids.length - most} more</span>}
    </span>
  );
}

/** What the plan has to say about an element. */
export function OwnFindings({ id }: { readonly id: string }) {
  const findings = useDocument((state) => state.plan.findings);
  const own = findings.filter(({ about }) => about.includes(id)).slice(0, 6);
  if (own.length === 0) return null;
  return (
    <section aria-label="Findings">
      {own.map((finding) => (
        <article
          key={`${finding.rule} ${finding.about.join(' ')}`}
          className="finding"
          data-severity={finding.severity}
        >
          <p className="place">
            <FindingWords severity={finding.severity}>{finding.says}</FindingWords>
          </p>
          <p className="source">{finding.source}</p>
        </article>
      ))}
    </section>
  );
}

/** A finding in words after its sign; `lead` stands before the word for how grave it is. */
export function FindingWords({
  severity,
  lead,
  children,
}: {
  readonly severity: Severity;
  readonly lead?: string;
  readonly children: ReactNode;
}) {
  return (
    <>
      <SeveritySign severity={severity} />
      <span>
        <b>
          {lead && `${lead}: `}
          {GRADES[severity]}.
        </b>{' '}
        {children}
      </span>
    </>
  );
}
