import { LOAD_STEPS, type LoadStep, loadStep, poundsByMember } from '../../../calc/steel/load-steps.ts';
import { withCounts } from '../../document/counted-plan.ts';
import { useDocument } from '../../document/use-document.tsx';
import { pounds } from '../../words/quantities.ts';
import { useView, useViewStore } from '../view-store.ts';

/** What the colors of the members mean, with how many carry so much. */
export function LoadsLegend() {
  const on = useView((state) => state.memberLoads);
  const station = useDocument((state) => state.station);
  return on && station === 'layout' ? <Legend /> : null;
}

function Legend() {
  const view = useViewStore();
  const members = useDocument((state) => state.site.members);
  const hung = useDocument((state) => withCounts(state.plan).hung);
  const own = poundsByMember(hung);
  const counts = new Map<LoadStep, number>();
  for (const { id } of members) {
    const step = loadStep(own.get(id));
    counts.set(step, (counts.get(step) ?? 0) + 1);
  }
  return (
    <section className="coverage-legend over-board" aria-label="Members by load" data-testid="loads-legend">
      <header>
        <h2>Members by load</h2>
        <button type="button" className="plain" onClick={() => view.setState({ memberLoads: false })}>
          Stop
        </button>
      </header>
      <dl>
        {[...LOAD_STEPS].reverse().map((step) => (
          <div key={step} data-count={counts.get(step) ?? 0}>
            <dt>
              <Swatch step={step} />
              {step}
            </dt>
            <dd>{counts.get(step) ?? 0}</dd>
          </div>
        ))}
      </dl>
      <p className="quiet">
        {pounds(hung.reduce((sum, one) => sum + one.pounds, 0))} in all. Capacity is checked by others.
      </p>
    </section>
  );
}

const Swatch = ({ step }: { readonly step: LoadStep }) => (
  <svg viewBox="0 0 26 14" width="26" height="14" aria-hidden="true" data-load={step.replaceAll(' ', '-')}>
    <path d="M0 7 H26" />
  </svg>
);
