import { METRES_PER_FOOT } from '../../../routing/site/numbers/units.ts';
import type { Units } from '../../../routing/site/schema/vocabulary.ts';
import { useDocument } from '../../document/use-document.tsx';
import { useView } from '../view-store.ts';

const LONGEST_PX = 150;

/** A round length, in the site's units, that is not longer on the screen than `LONGEST_PX`. */
export function scaleLength(pixelsPerFoot: number, units: Units): { readonly length: number; readonly px: number } {
  const pixels = units === 'm' ? pixelsPerFoot / METRES_PER_FOOT : pixelsPerFoot;
  const most = LONGEST_PX / pixels;
  const power = 10 ** Math.floor(Math.log10(most));
  const length = [5, 2, 1].map((n) => n * power).find((n) => n <= most * (1 + 1e-9)) ?? power;
  return { length, px: length * pixels };
}

export function ScaleBar() {
  const units = useDocument((state) => state.site.units);
  const scale = useView((state) => state.camera.scale);
  const { length, px } = scaleLength(scale, units);
  const mark = units === 'm' ? ' m' : "'";
  const half = length / 2;
  return (
    <div
      className="scale-bar"
      role="img"
      aria-label={`Scale: the bar is ${length} ${units === 'm' ? 'metres' : 'feet'} long`}
    >
      <svg width={px + 26} height="28" aria-hidden="true">
        <path d={`M6 7 H${6 + px} M6 3 V11 M${6 + px / 2} 4 V10 M${6 + px} 3 V11`} />
        <rect x="6" y="5.5" width={px / 2} height="3" />
        <text x="6" y="24" textAnchor="middle">
          0
        </text>
        <text x={6 + px / 2} y="24" textAnchor="middle">
          {`${half}${mark}`}
        </text>
        <text x={6 + px} y="24" textAnchor="middle">
          {`${length}${mark}`}
        </text>
      </svg>
    </div>
  );
}
