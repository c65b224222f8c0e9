import type { MarginKind, Margins } from '../../../calc/plan/margins.ts';
import type { Severity } from '../../../routing/site/rules/finding.ts';
import type { Units } from '../../../routing/site/schema/vocabulary.ts';
import { marginShare } from '../../words/margin-scale.ts';
import { marginWords } from '../../words/margins.ts';

const HALF = 52;
const HEIGHT = 12;

interface MarginRowProps {
  readonly kind: MarginKind;
  readonly margins: Margins;
  readonly units: Units;
  /** A warning about this margin turns a passing bar into one to look at. */
  readonly severity?: Severity | undefined;
  readonly children?: React.ReactNode;
}

/** One margin as a row: its name, its bar, and what is left in words. */
export function MarginBarRow({ kind, margins, units, severity, children }: MarginRowProps) {
  const words = marginWords(kind, margins, units);
  const share = marginShare(kind, margins) ?? 0;
  const state = !words ? 'none' : share < 0 ? 'fail' : severity === 'warn' ? 'warn' : 'pass';
  return (
    <div className="margin" data-kind={kind} data-state={state}>
      <span className="margin-kind">{kind}</span>
      <MarginBar share={share} state={state} />
      <span className="margin-words" title={words?.full}>
        {words ? (
          <>
            <b>{words.left}</b> {children ?? <span className="quiet">{words.limit}</span>}
          </>
        ) : (
          <span className="quiet">no figure</span>
        )}
      </span>
    </div>
  );
}

/** From the center mark to the right what is left, to the left what is missing; past full scale it ends in a notch. */
export function MarginBar({ share, state }: { readonly share: number; readonly state: string }) {
  const size = Math.min(1, Math.abs(share)) * HALF;
  const past = Math.abs(share) > 1;
  const x = share < 0 ? HALF - size : HALF;
  return (
    <svg className="bar" width={HALF * 2} height={HEIGHT + 4} aria-hidden="true">
      <line x1="0" x2={HALF * 2} y1={HEIGHT / 2 + 2} y2={HEIGHT / 2 + 2} className="bar-scale" />
      {state !== 'none' && (
        <rect x={x} y={3} width={Math.max(2, size)} height={HEIGHT - 2} className={`bar-${state}`} />
      )}
      {past && (
        <path
          className="bar-past"
          d={share < 0 ? 'M5 2 L1 8 L5 14' : `M${HALF * 2 - 5} 2 L${HALF * 2 - 1} 8 L${HALF * 2 - 5} 14`}
        />
      )}
      <line x1={HALF} x2={HALF} y1="0" y2={HEIGHT + 4} className="bar-center" />
    </svg>
  );
}

/** The hatch of failing bars, once for the page. */
export function BarPatterns() {
  return (
    <svg className="patterns" width="0" height="0" aria-hidden="true">
      <defs>
        <pattern id="hatch-fail" width="4" height="4" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect width="4" height="4" className="hatch-ground" />
          <rect width="2" height="4" className="hatch-line" />
        </pattern>
      </defs>
    </svg>
  );
}
