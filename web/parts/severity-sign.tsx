import type { Severity } from '../../routing/site/rules/finding.ts';

/** Fail a filled diamond, look a triangle, note a ring: told apart without their colors, and the same as on the board. */
export function SeveritySign({ severity }: { readonly severity: Severity | 'pass' }) {
  return (
    <svg className={`sign sign-${severity}`} viewBox="-8 -8 16 16" width="16" height="16" aria-hidden="true">
      {severity === 'fail' && (
        <>
          <path d="M0 -7 L7 0 L0 7 L-7 0 Z" />
          <path className="sign-cut" d="M-2.2 -2.2 L2.2 2.2 M2.2 -2.2 L-2.2 2.2" />
        </>
      )}
      {severity === 'warn' && <path d="M0 -6 L6.5 5.5 L-6.5 5.5 Z" />}
      {severity === 'note' && <circle r="5" />}
      {severity === 'pass' && <path d="M-5.5 0.5 L-1.5 4.5 L5.5 -4" />}
    </svg>
  );
}
