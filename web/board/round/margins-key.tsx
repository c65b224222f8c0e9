import { MARGIN_KINDS } from '../../../calc/plan/margins.ts';
import { useDocument } from '../../document/use-document.tsx';
import { MARGINS_FROM } from '../pictures/stalls/margin-bars.ts';
import { useView } from '../view-store.ts';

const LENGTHS = [14, 20, 10];

/** Which of the three bars beside every drop is which; there where they are. */
export function MarginsKey() {
  const on = useView((state) => state.marginBars && state.charging === null && state.camera.scale >= MARGINS_FROM);
  const station = useDocument((state) => state.station);
  const some = useDocument((state) => state.site.chargers.length > 0);
  if (!on || station === 'price' || !some) return null;
  return (
    <svg
      className="margins-key"
      width="78"
      height="40"
      role="img"
      aria-label={`The three bars beside every drop, from the top, what is left of each: ${MARGIN_KINDS.join(', ')}`}
    >
      <path d="M8 0 V38" />
      {MARGIN_KINDS.map((kind, i) => (
        <g key={kind}>
          <rect x="8" y={2 + i * 13} width={LENGTHS[i]} height="8" />
          <text x="34" y={10 + i * 13}>
            {kind}
          </text>
        </g>
      ))}
    </svg>
  );
}
