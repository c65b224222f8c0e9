import type { Point2 } from '../../../routing/site/site.ts';
import { PlaceFields } from '../../parts/fields.tsx';

interface CornersProps {
  readonly outline: readonly Point2[];
  readonly onChange: (outline: readonly Point2[]) => void;
}

/** The corners of an outline, each with its place; one is added half way to the next. */
export function Corners({ outline, onChange }: CornersProps) {
  return (
    <>
      {outline.map((corner, index) => (
        <div key={index}>
          <PlaceFields
            label={`corner ${index + 1}`}
            value={corner}
            onChange={(next) => onChange(outline.map((was, i) => (i === index ? next : was)))}
          />
          <p className="row-acts">
            <button type="button" className="plain" onClick={() => onChange(withCorner(outline, index))}>
              Add one after it
            </button>
            {outline.length > 3 && (
              <button type="button" className="plain" onClick={() => onChange(outline.filter((_, i) => i !== index))}>
                Take away
              </button>
            )}
          </p>
        </div>
      ))}
    </>
  );
}

function withCorner(outline: readonly Point2[], index: number): Point2[] {
  const [ax, ay] = outline[index]!;
  const [bx, by] = outline[(index + 1) % outline.length]!;
  return outline.toSpliced(index + 1, 0, [(ax + bx) / 2, (ay + by) / 2]);
}
