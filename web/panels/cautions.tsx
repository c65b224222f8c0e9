import { CAUTIONS } from '../../calc/cautions.ts';
import { useDocument } from '../document/use-document.ts';

/** Stands where results are read: at the ledger's foot and under the tables. */
export function Cautions() {
  const code = useDocument((state) => state.site.rules.code);
  return (
    <p className="cautions">
      {CAUTIONS} Checked against the rules of the site and {code}.
    </p>
  );
}
