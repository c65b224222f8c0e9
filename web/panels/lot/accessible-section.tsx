import { sizesOf, tableOf } from '../../../calc/sheets/site-work/accessible-sheet.ts';
import { ACCESS_STANDARDS, ACCESSIBLE_WORDS } from '../../../routing/checks/access/standards.ts';
import { ACCESSIBLE_BY } from '../../../routing/site/schema/vocabulary.ts';
import { changeRules } from '../../document/edits/set.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { ChoiceField } from '../../parts/fields.tsx';
import { nearestInch } from '../../words/lengths.ts';
import { Links } from '../facts/facts.tsx';

const SIZES = ['wide', 'long', 'access aisle'] as const;

/** Accessible stalls with a charger, asked and given by each standard; the one that is checked is chosen here. */
export function AccessibleSection() {
  const document = useDocumentStore();
  const site = useDocument((state) => state.site);
  const { counts, stalls } = tableOf(site);
  if (counts.every(({ of }) => of === 0)) return null;
  const length = (feet: number): string => (feet === 0 ? '–' : nearestInch(feet, site.units));
  const has = (feet: number): string => (feet === 0 ? 'none' : length(feet));
  return (
    <details className="site-form">
      <summary>Accessible stalls: asked and given</summary>
      <ChoiceField
        label="accessible stalls by"
        value={site.rules.accessibleBy}
        choices={ACCESSIBLE_BY}
        onChange={(accessibleBy) => {
          const { file, apply } = document.getState();
          apply(changeRules(file, { accessibleBy }));
        }}
      />
      <table className="ways" data-testid="accessible-counts">
        <caption>Stalls with a charger</caption>
        <thead>
          <tr>
            <th scope="col">by</th>
            <th scope="col">use</th>
            <th scope="col">asked</th>
            <th scope="col">given</th>
          </tr>
        </thead>
        <tbody>
          {counts.map(({ standard, use, of, asked, given, source }) => (
            <tr key={`${standard} ${use}`} title={source} data-state={given < asked ? 'short' : 'pass'}>
              <th scope="row">{`${ACCESS_STANDARDS[standard].name}, of ${of}`}</th>
              <td>{ACCESSIBLE_WORDS[use]}</td>
              <td>{asked}</td>
              <td>{given < asked ? <strong>{given}</strong> : given}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {stalls.length > 0 && (
        <table className="ways" data-testid="accessible-sizes">
          <caption>Sizes of accessible stalls</caption>
          <thead>
            <tr>
              <th scope="col">stall</th>
              <th scope="col">size</th>
              <th scope="col">asked</th>
              <th scope="col">given</th>
            </tr>
          </thead>
          <tbody>
            {stalls.flatMap((one) =>
              sizesOf(one).map(([given, asked], i) => (
                <tr
                  key={`${one.stall.id} ${SIZES[i]}`}
                  title={one.source}
                  data-state={given < asked - 0.02 ? 'short' : 'pass'}
                >
                  <th scope="row">
                    <Links ids={[one.stall.id]} most={1} />
                  </th>
                  <td>{SIZES[i]}</td>
                  <td>{length(asked)}</td>
                  <td>{given < asked - 0.02 ? <strong>{has(given)}</strong> : has(given)}</td>
                </tr>
              )),
            )}
          </tbody>
        </table>
      )}
      <p className="source">
        Which standard applies, routes, slopes, signs and markings are for the designer and the authority having
        jurisdiction. The proposed federal counts are not adopted; each row names its source.
      </p>
    </details>
  );
}
