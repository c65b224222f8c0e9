import type { Point3, Raceway } from '../../../routing/site/site.ts';
import { PlaceFields } from '../../parts/fields.tsx';

interface VerticesProps {
  readonly path: Raceway['path'];
  readonly onChange: (path: Raceway['path']) => void;
}

/** The vertices of a raceway, each with its place; one is added half way to the next. */
export function Vertices({ path, onChange }: VerticesProps) {
  const put = (vertices: readonly Point3[]): void => onChange(vertices as Raceway['path']);
  return path.map((at, index) => (
    <div key={index}>
      <PlaceFields
        label={`vertex ${index + 1}`}
        value={at}
        onChange={(next) => put(path.map((was, i) => (i === index ? next : was)))}
      />
      <p className="row-acts">
        {index < path.length - 1 && (
          <button
            type="button"
            className="plain"
            onClick={() => put(path.toSpliced(index + 1, 0, half(at, path[index + 1]!)))}
          >
            Add one after it
          </button>
        )}
        {path.length > 2 && (
          <button type="button" className="plain" onClick={() => put(path.filter((_, i) => i !== index))}>
            Take away
          </button>
        )}
      </p>
    </div>
  ));
}

const half = (a: Point3, b: Point3): Point3 => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2];
