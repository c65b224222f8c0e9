import { asBuiltOf } from '../../../calc/plan/as-built.ts';
import { useDocument } from '../../document/use-document.tsx';
import { type TitleCell, TitleCells } from '../../parts/title-cells.tsx';

/** How the lot stands, and how far it is built. */
export function BuildCells({ cells }: { readonly cells: readonly TitleCell[] }) {
  const site = useDocument((state) => state.site);
  const plan = useDocument((state) => state.plan);
  const off = plan.findings.filter(({ rule }) => rule === 'as-built').length;
  const fails = asBuiltOf(plan, site).findings.filter(({ severity }) => severity === 'fail').length;
  const checked = site.drops.filter(({ id }) => site.asBuilt.get(id)?.checkedOn !== undefined).length;
  return (
    <TitleCells
      cells={[
        ...cells,
        { label: 'drops', value: String(site.drops.length) },
        { label: 'checked as built', value: `${checked} of ${site.drops.length}` },
        { label: 'off the drawing', value: String(off), state: off > 0 ? 'warn' : 'pass' },
        { label: 'fails only as built', value: String(fails), state: fails > 0 ? 'fail' : 'pass' },
      ]}
    />
  );
}
