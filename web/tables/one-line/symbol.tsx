import { type ReactElement, useMemo } from 'react';
import { WHITE } from '../../../calc/sheets/pdf/kit/ink.ts';
import { LETTERS } from '../../../calc/sheets/pdf/kit/lettering/letters.ts';
import { drawBreaker } from '../../../calc/sheets/pdf/one-line/circuit-symbols.ts';
import { drawOneLineSymbol } from '../../../calc/sheets/pdf/one-line/one-line-symbols.ts';
import { SYMBOL_HALF, SYMBOL_HEIGHT, type SymbolPen } from '../../../calc/sheets/pdf/one-line/symbol-pen.ts';
import { direction } from '../../../routing/plane/direction.ts';
import type { EquipmentKind } from '../../../routing/site/schema/vocabulary.ts';
import type { Point2 } from '../../../routing/site/site.ts';

/** Pixels of a millimeter of line weight on a sheet. */
const WEIGHT_PX = 3;
/** A letter is about so wide, as a share of the size of the font: enough to cut a name to its box. */
const LETTER_WIDTH = 0.56;

const at = ([x, y]: Point2): string => `${round(x)} ${round(-y)}`;
const round = (value: number): number => Math.round(value * 100) / 100;

/** Draws the symbols of the sheets as shapes of an SVG, y down, in the color of the text. */
function svgPen(): { readonly pen: SymbolPen; readonly shapes: ReactElement[] } {
  const shapes: ReactElement[] = [];
  const path = (d: string, weight: number): void => {
    shapes.push(<path key={shapes.length} d={d} strokeWidth={weight * WEIGHT_PX} />);
  };
  const trace = (points: readonly Point2[]): string =>
    points.map((one, i) => `${i === 0 ? 'M' : 'L'}${at(one)}`).join('');
  const pen: SymbolPen = {
    lettering: { sizes: { ...LETTERS.tabloid, small: 10 }, width: (text, size) => text.length * LETTER_WIDTH * size },
    line: (points, { weight }, closed = false) => path(`${trace(points)}${closed ? 'Z' : ''}`, weight),
    lines: (many, { weight }) => path(many.map(trace).join(''), weight),
    circle: ([x, y], radius, ink, fill) => {
      shapes.push(
        <circle
          key={shapes.length}
          cx={round(x)}
          cy={round(-y)}
          r={radius}
          strokeWidth={(ink?.weight ?? 0) * WEIGHT_PX}
          className={fill === WHITE ? 'blank' : undefined}
        />,
      );
    },
    arc: (middle, radius, from, to, { weight }) => {
      const end = (degrees: number): Point2 => {
        const [ux, uy] = direction(degrees);
        return [middle[0] + radius * ux, middle[1] + radius * uy];
      };
      path(`M${at(end(from))}A${radius} ${radius} 0 ${to - from > 180 ? 1 : 0} 0 ${at(end(to))}`, weight);
    },
    fill: (points) => {
      shapes.push(<path key={shapes.length} d={`${trace(points)}Z`} className="filled" />);
    },
    fillArea: ({ x, y, width, height }) => {
      shapes.push(
        <rect
          key={shapes.length}
          x={x}
          y={-y - height}
          width={width}
          height={height}
          className="blank"
          stroke="none"
        />,
      );
    },
    text: (words, [x, y], { size, anchor }) => {
      shapes.push(
        <text
          key={shapes.length}
          x={x}
          y={round(-y)}
          fontSize={size}
          textAnchor={anchor === 'middle' ? 'middle' : 'start'}
        >
          {words}
        </text>,
      );
    },
  };
  return { pen, shapes };
}

/** The symbol of a piece of equipment as the sheets draw it. */
export function EquipmentSymbol({ kind, name }: { readonly kind: EquipmentKind; readonly name: string }) {
  const shapes = useMemo(() => {
    const { pen, shapes } = svgPen();
    drawOneLineSymbol(pen, kind, name, [0, 0], 1);
    return shapes;
  }, [kind, name]);
  return (
    <svg
      className="ol-symbol"
      width={2 * SYMBOL_HALF + 4}
      height={SYMBOL_HEIGHT}
      viewBox={`${-SYMBOL_HALF - 2} 0 ${2 * SYMBOL_HALF + 4} ${SYMBOL_HEIGHT}`}
      aria-hidden="true"
    >
      {shapes}
    </svg>
  );
}

/** A breaker on a line, as the sheets draw it; a dashed ring where one is needed and nobody drew it. */
export function BreakerSymbol({ missing }: { readonly missing: boolean }) {
  const shapes = useMemo(() => {
    const { pen, shapes } = svgPen();
    drawBreaker(pen, [0, 0], '', 1);
    return shapes;
  }, []);
  return (
    <svg className="ol-breaker" width="20" height="20" viewBox="-10 -10 20 20" aria-hidden="true">
      {missing ? <circle r="7" strokeWidth="1.5" strokeDasharray="3 2.5" className="blank" /> : shapes}
    </svg>
  );
}
