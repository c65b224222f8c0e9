import { METRES_PER_FOOT } from '../../routing/site/numbers/units.ts';
import type { Units } from '../../routing/site/schema/vocabulary.ts';
import type { LegendEntry } from './legend.ts';
import { PX_PER_INCH } from './paper-view.ts';

/** Inches: the longest bar. */
const LONGEST = 2.2;

/** A round length in the units of the site, and how long it is on paper, inches. */
export function barOnPaper(pxPerFoot: number, units: Units): { readonly length: number; readonly inches: number } {
  const inchesPerUnit = pxPerFoot / PX_PER_INCH / (units === 'm' ? METRES_PER_FOOT : 1);
  const most = LONGEST / inchesPerUnit;
  const power = 10 ** Math.floor(Math.log10(most));
  const length = [5, 2, 1].map((n) => n * power).find((n) => n <= most * (1 + 1e-9)) ?? power;
  return { length, inches: length * inchesPerUnit };
}

interface ScaleStripProps {
  readonly says: string;
  readonly pxPerFoot: number;
  readonly units: Units;
  /** Degrees that north lies left of up; undefined where the site does not say. */
  readonly north: number | undefined;
  readonly legend: readonly LegendEntry[];
}

/** Below the picture: north, scale in words and as a bar, and what the signs mean. */
export function ScaleStrip({ says, pxPerFoot, units, north, legend }: ScaleStripProps) {
  const { length, inches } = barOnPaper(pxPerFoot, units);
  return (
    <div className="print-strip">
      <svg viewBox="-14 -20 28 48" className="print-north" aria-hidden="true">
        <path
          d="M0 -18 L8 14 L0 8 L-8 14 Z M0 -18 L0 8"
          fill="none"
          stroke="#000"
          transform={`rotate(${-(north ?? 0)})`}
        />
        <text y="26" textAnchor="middle">
          {north === undefined ? 'plan north' : 'N'}
        </text>
      </svg>
      <div>
        <b>{says}</b>
        <svg
          className="print-bar"
          viewBox={`-10 0 ${100 * inches + 60} 30`}
          style={{ width: `${inches + 0.6}in` }}
          aria-hidden="true"
        >
          <rect x="0" y="4" width={100 * inches} height="7" fill="none" stroke="#000" strokeWidth="0.8" />
          <rect x="0" y="4" width={50 * inches} height="7" fill="#000" />
          {[0, 50 * inches, 100 * inches].map((at, i) => (
            <text key={at} x={at} y="25" textAnchor="middle">
              {`${(length / 2) * i}${i === 2 ? ` ${units}` : ''}`}
            </text>
          ))}
        </svg>
      </div>
      <ul>
        {legend.map(({ words, paths }) => (
          <li key={words}>
            <svg viewBox="0 0 26 14" aria-hidden="true">
              {paths.map(({ d, stroke = 'none', fill = 'none', width = 1, dash }) => (
                <path key={d} d={d} stroke={stroke} fill={fill} strokeWidth={width} strokeDasharray={dash} />
              ))}
            </svg>
            {words}
          </li>
        ))}
      </ul>
    </div>
  );
}
