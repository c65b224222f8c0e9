import { SILENT, type Tell } from '../../words/explain.ts';
import { measured } from '../../words/measured.ts';

export type PullSegment =
  | {
      readonly kind: 'straight';
      /** Feet along the raceway. */
      readonly length: number;
      /** Degrees above level in the direction of the pull; below level is negative. */
      readonly slope?: number | undefined;
    }
  | {
      readonly kind: 'bend';
      /** Degrees turned. */
      readonly angle: number;
      /** Feet to the centre line. */
      readonly radius: number;
    };

export interface PullInput {
  /** In the order in which the conductors are pulled through. */
  readonly segments: readonly PullSegment[];
  /** Of all conductors together, lb. */
  readonly weightPerFoot: number;
  /** Coefficient between conductors and raceway. */
  readonly friction: number;
  /** Pull that holds the conductors back at the feeding end, lb. */
  readonly tensionIn?: number | undefined;
}

export interface PullForces {
  /** Pounds at the end of each segment. */
  readonly tension: readonly number[];
  /** Pounds per foot against the inside of each bend; 0 for straight segments. */
  readonly sidewall: readonly number[];
}

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

const SOURCE = 'cable pulling practice: T + w L (f cos + sin) on a straight, T e^(f x angle) round a bend';

/**
 * Tension and sidewall pressure of a pull, segment by segment. A bend multiplies the tension by e^(friction x angle),
 * whichever way it turns: the weight of the conductors within it is left out, as the common hand method does. Down a
 * slope that the conductors would slide by themselves the tension is 0, never less.
 * @example
 * // Hand-worked: 20 + 1.5 x 100 x 0.4 = 80 lb, then 80 x e^(0.4 x pi / 2) = 149.96 lb, over 2 ft
 * pulling({
 *   segments: [
 *     { kind: 'straight', length: 100 },
 *     { kind: 'bend', angle: 90, radius: 2 },
 *   ],
 *   weightPerFoot: 1.5,
 *   friction: 0.4,
 *   tensionIn: 20,
 * }) // { tension: [80, 149.96], sidewall: [0, 74.98] }
 */
export function pulling(input: PullInput, tell: Tell = SILENT): PullForces {
  const { segments, weightPerFoot, friction, tensionIn = 0 } = input;
  const tension: number[] = [];
  const sidewall: number[] = [];
  let before = tensionIn;
  segments.forEach((segment, at) => {
    const start = before;
    const end = segment.kind === 'straight' ? afterStraight(start, segment) : start * bendFactor(segment.angle);
    const pressure = segment.kind === 'straight' ? 0 : end / segment.radius;
    tension.push(end);
    sidewall.push(pressure);
    before = end;
    tell(() => ({
      find: `tension after segment ${at + 1}`,
      formula:
        segment.kind === 'straight'
          ? 'tension before + weight x length x (friction x cos slope + sin slope)'
          : 'tension before x e^(friction x angle)',
      values: {
        'tension before': measured(start, 'lb'),
        friction,
        ...(segment.kind === 'straight'
          ? {
              weight: measured(weightPerFoot, 'lb/ft'),
              length: measured(segment.length, 'ft'),
              slope: `${segment.slope ?? 0} degrees`,
            }
          : { angle: `${segment.angle} degrees` }),
      },
      result: end,
      unit: 'lb',
      source: SOURCE,
    }));
    if (segment.kind === 'bend')
      tell(() => ({
        find: `sidewall pressure in segment ${at + 1}`,
        formula: 'tension after the bend / its radius',
        values: { tension: measured(end, 'lb'), radius: measured(segment.radius, 'ft') },
        result: pressure,
        unit: 'lb/ft',
        source: 'cable pulling practice',
      }));
  });
  return { tension, sidewall };

  function afterStraight(start: number, { length, slope = 0 }: { length: number; slope?: number | undefined }): number {
    const along = radians(slope);
    return Math.max(0, start + weightPerFoot * length * (friction * Math.cos(along) + Math.sin(along)));
  }

  function bendFactor(degrees: number): number {
    return Math.exp(friction * radians(degrees));
  }
}
