import { useMemo } from 'react';
import type { Alternative } from '../../calc/plan/compared/comparison.ts';
import { revision } from '../../calc/plan/compared/revision.ts';
import { REVISION_NAMES } from '../../calc/sheets/revision-names.ts';
import type { Ref } from '../document/change/element-lists.ts';
import { fileNameOf } from '../document/files/files.ts';
import { useDocumentStore } from '../document/use-document.tsx';
import { usePageActions } from '../page-state/page-actions.ts';
import { saveRevised } from '../sheets/ask-sheets.ts';
import { priceWords } from '../words/dollars.ts';
import { quantityWords } from '../words/quantities.ts';

/** What the open site changes in one other version: elements to show on the board, every quantity, price and findings. */
export function ChangesSince({ before, after }: { readonly before: Alternative; readonly after: Alternative }) {
  const { reveal } = usePageActions();
  const document = useDocumentStore();
  const changes = useMemo(() => revision(before, after), [before, after]);
  const { units } = after.site;
  const standing = changes.elements.filter(({ change }) => change !== 'removed');
  const count = (change: string): number => changes.elements.filter((one) => one.change === change).length;
  const words = ['added', 'removed', 'moved', 'changed']
    .filter((change) => count(change) > 0)
    .map((change) => `${count(change)} ${change}`)
    .join(', ');
  return (
    <details className="changes-since">
      <summary>
        What the open site changes in {before.name}: {words || 'no element'}, {changes.quantities.length} quantities,
        price {priceWords(changes.cost.before, { name: before.cost.prices })} to{' '}
        {priceWords(changes.cost.after, { name: after.cost.prices })}
      </summary>
      {standing.length > 0 && (
        <button type="button" onClick={() => reveal(standing.map(({ list, id }): Ref => ({ list, id })))}>
          Show {standing.length} on the board
        </button>
      )}
      {(changes.elements.length > 0 || changes.quantities.length > 0) && (
        <div className="row">
          {REVISION_NAMES.map((file) => (
            <button
              type="button"
              key={file.ending}
              onClick={() =>
                saveRevised(document.getState(), { name: fileNameOf(before.name), site: before.site }, file)
              }
            >
              Save the {file.says}
            </button>
          ))}
        </div>
      )}
      <ul>
        {changes.elements
          .filter(({ change }) => change === 'removed')
          .map(({ list, id }) => (
            <li key={`${list} ${id}`}>
              removed {id} ({list})
            </li>
          ))}
        {changes.quantities.map(({ item, spec, unit, before: was, after: now }) => (
          <li key={`${item} ${spec}`}>
            {item}, {spec}: {quantityWords(was, unit, units)} to {quantityWords(now, unit, units)}
          </li>
        ))}
        {changes.findings.come.map(({ says }) => (
          <li key={`come ${says}`}>new finding: {says}</li>
        ))}
        {changes.findings.gone.map(({ says }) => (
          <li key={`gone ${says}`}>finding gone: {says}</li>
        ))}
      </ul>
    </details>
  );
}
