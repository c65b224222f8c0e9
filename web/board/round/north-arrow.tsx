import { useDocument } from '../../document/use-document.tsx';

/** North, where the site says which way it is; else plan north, which is up. */
export function NorthArrow() {
  const bearing = useDocument((state) => state.site.georef?.bearing);
  const words = bearing === undefined ? 'plan north' : 'N';
  return (
    <div
      className="north over-board"
      role="img"
      aria-label={bearing === undefined ? 'Plan north is up' : `North, ${bearing} degrees left of up`}
    >
      <svg viewBox="-14 -20 28 40" width="28" height="40" aria-hidden="true">
        <g transform={`rotate(${-(bearing ?? 0)})`}>
          <path d="M0 -18 L8 14 L0 8 L-8 14 Z" className="north-half" />
          <path d="M0 -18 L0 8 L-8 14 Z" className="north-dark" />
        </g>
      </svg>
      <span>{words}</span>
    </div>
  );
}
