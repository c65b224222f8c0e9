import { asBuiltOf, type ChargerAsBuilt } from '../../../calc/plan/as-built.ts';
import { MARGIN_KINDS, type MarginKind } from '../../../calc/plan/margins.ts';
import type { Units } from '../../../routing/site/schema/vocabulary.ts';
import type { Drop } from '../../../routing/site/site.ts';
import { useDocument } from '../../document/use-document.tsx';
import { nearestInch } from '../../words/lengths.ts';
import { marginWords } from '../../words/margins.ts';
import { FindingWords } from '../facts/facts.tsx';

/** What the measured places do to cord, branch and voltage, beside the same as drawn, and what fails only as built. */
export function AsBuiltResults({ drop }: { readonly drop: Drop }) {
  const site = useDocument((state) => state.site);
  const plan = useDocument((state) => state.plan);
  const found = asBuiltOf(plan, site).drops.get(drop.id);
  if (!found || found.away === 0) return null;
  return (
    <section className="built-results" aria-label="What it does">
      {found.chargers.map((charger) => (
        <Compared key={charger.charger} charger={charger} units={site.units} />
      ))}
      {found.findings.map((finding) => (
        <article
          key={`${finding.rule} ${finding.says}`}
          className="finding"
          data-severity={finding.severity}
          data-rule={finding.rule}
        >
          <p className="place">
            <FindingWords severity={finding.severity} lead="As built">
              {finding.says}
            </FindingWords>
          </p>
          <p className="source">{finding.source}</p>
        </article>
      ))}
    </section>
  );
}

function Compared({ charger, units }: { readonly charger: ChargerAsBuilt; readonly units: Units }) {
  const { drawn, built, run } = charger;
  const word = (kind: MarginKind, margins: typeof drawn): string => marginWords(kind, margins, units)?.left ?? '–';
  const length = (feet: number | null): string => (feet === null ? 'no run' : nearestInch(feet, units));
  return (
    <table className="built-table" aria-label={`${charger.charger} as drawn and as built`}>
      <thead>
        <tr>
          <th scope="col">{charger.charger}</th>
          <th scope="col">as drawn</th>
          <th scope="col">as built</th>
        </tr>
      </thead>
      <tbody>
        {MARGIN_KINDS.map((kind) => (
          <tr key={kind} data-kind={kind} data-state={(built[kind]?.left ?? 0) < 0 ? 'fail' : 'pass'}>
            <th scope="row">{kind}</th>
            <td>{word(kind, drawn)}</td>
            <td>{word(kind, built)}</td>
          </tr>
        ))}
        <tr>
          <th scope="row">run</th>
          <td>{length(run.drawn)}</td>
          <td>{length(run.built)}</td>
        </tr>
      </tbody>
    </table>
  );
}
