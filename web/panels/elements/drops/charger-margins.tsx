import { MARGIN_KINDS, marginsOf } from '../../../../calc/plan/margins.ts';
import { whyMargin } from '../../../../calc/why/why-margins.ts';
import { findStall } from '../../../document/find/finders.ts';
import { useDocument } from '../../../document/use-document.tsx';
import { PARKED } from '../../../words/margins.ts';
import { MarginBarRow } from '../../facts/margin-bar.tsx';
import { Why } from '../../facts/why.tsx';

/** Rules whose warnings speak of a margin, so that its bar asks for a look. */
const WARNS = { cord: ['reach'], branch: ['branch-limit'], volts: ['branch-drop', 'total-drop'] } as const;

/** The three margins of a charger, and the case that decides its cord. */
export function ChargerMargins({ charger }: { readonly charger: string }) {
  const site = useDocument((state) => state.site);
  const plan = useDocument((state) => state.plan);
  const margins = marginsOf(plan, site).get(charger);
  if (!margins) return null;
  const warned = plan.findings.filter(({ severity, about }) => severity === 'warn' && about.includes(charger));
  return (
    <section className="margins" aria-label={`Margins of ${charger}`} data-charger={charger}>
      {MARGIN_KINDS.map((kind) => (
        <MarginBarRow
          key={kind}
          kind={kind}
          margins={margins}
          units={site.units}
          severity={warned.some(({ rule }) => (WARNS[kind] as readonly string[]).includes(rule)) ? 'warn' : undefined}
        />
      ))}
      {margins.cord && (
        <p className="quiet small">
          Worst cord: stall {findStall(site.stalls, margins.cord.stall)?.label ?? margins.cord.stall},{' '}
          {PARKED[margins.cord.direction]}, inlet {margins.cord.inlet}.
        </p>
      )}
      <Why
        ask="Why these margins?"
        steps={() => MARGIN_KINDS.flatMap((kind) => whyMargin(site, plan, charger, kind))}
      />
    </section>
  );
}
