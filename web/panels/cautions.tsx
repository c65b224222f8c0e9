import { CAUTIONS } from '../../calc/cautions.ts';
import { editionWords } from '../../calc/tables/nec-2023.ts';
import { useDocument } from '../document/use-document.ts';

/** Stands where results are read: at the ledger's foot and under the tables. */
export function Cautions() {
  const code = useDocument((state) => editionWords(state.site.rules));
  return (
    <p className="cautions">
      {CAUTIONS} Checked against the rules of the site and {code}.
    </p>
  );
}
