import { COVERAGE_STEPS, type CoverageStep, coverageStep, stallCoverage } from '../../../calc/plan/stall-coverage.ts';
import { useDocument } from '../../document/use-document.tsx';
import { useView, useViewStore } from '../view-store.ts';

const WORDS: Readonly<Record<CoverageStep, string>> = {
  all: 'every inlet in reach',
  'half and over': 'half and over',
  'under half': 'under half',
  none: 'no inlet in reach',
  unserved: 'no charger',
};

/** What the shading of the stalls means, in colors, patterns and words, with how many stalls stand so. */
export function CoverageLegend() {
  const view = useViewStore();
  const on = useView((state) => state.coverage);
  const station = useDocument((state) => state.station);
  const stalls = useDocument((state) => state.site.stalls);
  const reach = useDocument((state) => state.plan.reach);
  if (!on || station !== 'layout') return null;
  const coverage = stallCoverage(reach);
  const counts = new Map<CoverageStep, number>();
  for (const { id } of stalls) {
    const step = coverageStep(coverage.get(id));
    counts.set(step, (counts.get(step) ?? 0) + 1);
  }
  return (
    <section className="coverage-legend over-board" aria-label="Stalls by coverage" data-testid="coverage-legend">
      <header>
        <h2>Stalls by coverage</h2>
        <button type="button" className="plain" onClick={() => view.setState({ coverage: false })}>
          Stop
        </button>
      </header>
      <dl>
        {[...COVERAGE_STEPS].reverse().map((step) => (
          <div key={step} data-count={counts.get(step) ?? 0}>
            <dt>
              <Swatch step={step} />
              {WORDS[step]}
            </dt>
            <dd>{counts.get(step) ?? 0}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

const LINES: Readonly<Record<CoverageStep, string>> = {
  unserved: '',
  none: 'M-2 6 L6 -2 M2 14 L14 2 M10 18 L24 4 M20 18 L28 10 M-2 8 L8 18 M0 -2 L18 16 M10 -4 L28 12',
  'under half': 'M-2 6 L6 -2 M-2 14 L14 -2 M4 16 L22 -2 M12 16 L28 0',
  'half and over': 'M2 16 L18 0',
  all: '',
};

const Swatch = ({ step }: { readonly step: CoverageStep }) => (
  <svg viewBox="0 0 26 14" width="26" height="14" aria-hidden="true" data-step={step.replaceAll(' ', '-')}>
    <rect width="26" height="14" />
    <path d={LINES[step]} />
  </svg>
);
