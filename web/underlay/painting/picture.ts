import type { Box } from '../../../routing/plane/box.ts';
import type { GroundFeature } from '../../../routing/site/import/geojson.ts';
import type { DrawnWords } from '../../../routing/site/import/imported.ts';
import type { Georef } from '../../../routing/site/site.ts';
import type { Placement } from '../placing/placement.ts';
import type { PackedLines } from '../reading/packed-lines.ts';

/** Colors to draw by: of ink on the board's ground, and whether that ground is dark. */
export interface Colors {
  readonly ink: string;
  readonly dark: boolean;
}

/** How far the reading of a file is told, from 0 to 1, and how it is stopped. */
export interface ReadingTold {
  readonly tell?: (share: number) => void;
  readonly signal?: AbortSignal;
}

/** What lies under the drawing, made ready: coordinates in the file's own units, x to the right, y up. */
export interface UnderlayPicture {
  /** What the view and the place of the file go by. */
  readonly box: Box;
  /** All that there is to draw, where some of it lies far outside. */
  readonly extent?: Box;
  /** Draws a part of it, so many pixels to a unit. Rejects where the file has a fault there. */
  readonly render: (part: Box, perUnit: number, colors: Colors) => Promise<CanvasImageSource>;
  /** Feet in a unit of the file; null where the file does not say. */
  readonly feetPerUnit: number | null;
  /** Units of the file in an inch of the sheet that it is; absent where it is none. */
  readonly perInch?: number;
  /** Feet on the ground in an inch of the sheet, as its words say; absent where they do not. */
  readonly statedFeet?: number;
  /** Where it says itself that it lies on the site that it was drawn from, which `georef` lays on the ground. */
  readonly place?: Placement;
  /** What another of its pages states of where it lies. */
  readonly ofPage?: (page: number) => Promise<Pick<UnderlayPicture, 'place' | 'statedFeet' | 'perInch' | 'georef'>>;
  /** Half of the last digit of its coordinates, units of the file; 0 where absent. */
  readonly rounding?: number;
  /** What a person should know of how it was read. */
  readonly notes: readonly string[];
  readonly pages?: number;
  /** The lines of a drawing, for turning them into elements and for drawing the hand to them. */
  readonly lines?: PackedLines;
  readonly words?: readonly DrawnWords[];
  readonly features?: readonly GroundFeature[];
  /** Point of the file that `box` and lines are counted from: in a GeoJSON, longitude and latitude. */
  readonly ground?: readonly [lon: number, lat: number];
  /** Where the site that it was written from lies. */
  readonly georef?: Georef;
  readonly close: () => void;
}

/** Why a file cannot lie under the drawing, in words for the person who picked it. */
export class UnderlayFault extends Error {}

/** Pixels to a side of what is drawn at one go. */
export const MAX_SIDE = 4096;

/** A canvas of a part, with a pen that takes points of the file (y up). */
export function canvasFor(part: Box, perUnit: number): { canvas: HTMLCanvasElement; pen: CanvasRenderingContext2D } {
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.min(MAX_SIDE, Math.round((part.maxX - part.minX) * perUnit)));
  canvas.height = Math.max(1, Math.min(MAX_SIDE, Math.round((part.maxY - part.minY) * perUnit)));
  const pen = canvas.getContext('2d');
  if (!pen) throw new UnderlayFault('the browser has no room for a picture of this size');
  return { canvas, pen };
}

/** Turns the light of a drawing on white paper round, for a dark ground. */
export function inverted(pen: CanvasRenderingContext2D): void {
  pen.save();
  pen.setTransform(1, 0, 0, 1, 0, 0);
  pen.globalCompositeOperation = 'difference';
  pen.fillStyle = '#fff';
  pen.fillRect(0, 0, pen.canvas.width, pen.canvas.height);
  pen.restore();
}
