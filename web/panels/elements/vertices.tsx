import { PlaceFields } from '../../parts/fields.tsx';

type Place = readonly [number, number] | readonly [number, number, number];

interface VerticesProps<P extends Place> {
  readonly path: readonly P[];
  readonly onChange: (path: P[]) => void;
}

/** The vertices of a raceway or a boundary, each with its place; one is added half way to the next. */
export function Vertices<P extends Place>({ path, onChange }: VerticesProps<P>) {
  return path.map((at, index) => (
    <div key={index}>
      <PlaceFields
        label={`vertex ${index + 1}`}
        value={at}
        onChange={(next) => onChange(path.map((was, i) => (i === index ? next : was)))}
      />
      <p className="row-acts">
        {index < path.length - 1 && (
          <button
            type="button"
            className="plain"
            onClick={() => onChange(path.toSpliced(index + 1, 0, half(at, path[index + 1]!)))}
          >
            Add one after it
          </button>
        )}
        {path.length > 2 && (
          <button type="button" className="plain" onClick={() => onChange(path.filter((_, i) => i !== index))}>
            Take away
          </button>
        )}
      </p>
    </div>
  ));
}

const half = <P extends Place>(a: P, b: P): P => a.map((value, i) => (value + b[i]!) / 2) as unknown as P;
