import type { Run } from '../../../../routing/network/run.ts';
import { byId } from '../../../../routing/site/look-up.ts';
import { printLength } from '../../../../routing/site/numbers/feet-inches.ts';
import type { Point2, Site } from '../../../../routing/site/site.ts';
import type { Plan } from '../../../plan/plan-shape.ts';
import { type Area, right, top } from '../kit/area.ts';
import { BLACK, inkOf, PENS } from '../kit/ink.ts';
import type { LabelGround } from '../kit/labels/best-label-place.ts';
import { drawDimensions, stringFigures } from '../kit/labels/dimension.ts';
import { freeSpace, takeAlong } from '../kit/labels/free-space.ts';
import { writeLabels } from '../kit/labels/labels.ts';
import { LEADING } from '../kit/lettering/letters.ts';
import { shortened, wrapped } from '../kit/lettering/lines-of-text.ts';
import type { Pen } from '../kit/pen.ts';
import { pointsPerFoot, type Scale } from '../kit/view/scales.ts';
import { drawSymbol } from '../plans/base-plan.ts';
import { circuitConductors, circuitFor, circuitTags, conduitSize, phaseInks } from '../schedules/circuit-words.ts';
import { figure } from '../schedules/figures.ts';
import type { RunStrip, StripPoint } from './run-strip.ts';
import { type OnSheet, stripWishes } from './strip-labels.ts';

/** What all strips of a set share: their scales and the elevations that they show, feet. */
export interface StripFrame {
  readonly along: Scale;
  readonly up: Scale;
  readonly low: number;
  readonly high: number;
}

/** Room left of a profile for elevations, and right of it for the drop, points. */
export const STRIP_SIDES = { left: 50, right: 46 };
const LABELS_OVER = 30;
const UNDER = 26;
const SYMBOL = 7;
const RAIL = { ...PENS.medium, weight: 0.5 };
const BURIED = { ...RAIL, dash: [3, 1.5] };
const TAP = { ...PENS.plain, dash: [1.2, 1] };

/** Height of a strip with its heading and its list of conduits, points. */
export function stripHeight({ up, low, high }: StripFrame, small: number): number {
  const text = small * LEADING;
  return 2 * text + 6 + LABELS_OVER + (high - low) * pointsPerFoot(up) + UNDER + 2 * text + 6;
}

/** Draws one strip into an area: heading, profile with what is on it, distances, conduits. */
export function drawStrip(
  pen: Pen,
  area: Area,
  site: Site,
  plan: Plan,
  run: Run,
  strip: RunStrip,
  frame: StripFrame,
): void {
  const { small } = pen.lettering.sizes;
  const text = small * LEADING;
  drawHeading(pen, area, site, plan, run);
  const [alongFoot, upFoot] = [pointsPerFoot(frame.along), pointsPerFoot(frame.up)];
  const left = area.x + STRIP_SIDES.left;
  const floor = area.y + 2 * text + 6 + UNDER;
  const at = ({ along, z }: StripPoint): Point2 => [left + along * alongFoot, floor + (z - frame.low) * upFoot];
  const end = Math.max(strip.points.at(-1)!.along, strip.retractor?.along ?? 0);
  const ground: LabelGround = { hard: freeSpace(), heavy: freeSpace(), thin: freeSpace() };
  drawGrade(pen, at, end, left, ground);
  drawProfile(pen, strip, at, ground);
  drawOpenings(pen, strip, at, ground);
  drawElevations(pen, strip, at, area.x, site, ground);
  drawDistances(pen, strip, at, floor - 14, site);
  const room: Area = {
    x: left - 40,
    y: floor - 2,
    width: right(area) - left,
    height: top(area) - 2 * text - 6 - floor,
  };
  writeLabels(pen, room, ground, stripWishes(strip, run, at));
  const words = strip.conduits
    .map(({ conduit }) => `${conduit.id} ${conduitSize(conduit)} ${printLength(conduit.length, site.units)}`)
    .join(';  ');
  wrapped(words, area.width, small, pen.lettering, { most: 2 }).forEach((line, i) => {
    pen.text(line, [area.x, area.y + text * (1 - i) + 4], { size: small });
  });
  pen.line(
    [
      [area.x, area.y],
      [right(area), area.y],
    ],
    PENS.existingHair,
  );
}

/** Two lines: what it is and how long; then what it is pulled in and what it drops. */
function drawHeading(pen: Pen, area: Area, site: Site, plan: Plan, run: Run): void {
  const { small, note } = pen.lettering.sizes;
  const circuit = circuitFor(plan.circuits, run.charger);
  const length = `Run ${printLength(run.length ?? Number.NaN, site.units)}`;
  const conductor = `conductor ${printLength(run.conductorLength ?? Number.NaN, site.units)}`;
  const lengths = `${length}, ${conductor}`;
  const y = top(area) - note;
  pen.text(lengths, [right(area), y], { size: small, anchor: 'right' });
  let x = area.x;
  const name = `${run.charger} at ${run.drop}`;
  const room = area.width - pen.lettering.width(lengths, small) - 12;
  const fitting = shortened(name, room * 0.6, note, pen.lettering, 'bold');
  pen.text(fitting, [x, y], { size: note, weight: 'bold' });
  x += pen.lettering.width(fitting, note, 'bold') + 10;
  const volts = byId(site.chargers).get(run.charger)?.volts ?? 208;
  if (circuit !== undefined) {
    for (const ink of phaseInks(circuit.phases, volts)) {
      pen.circle([x + 2, y + note * 0.35], 2.2, null, ink);
      x += 6;
    }
    const tag = `${circuitTags(site).get(run.charger) ?? run.from}, ${circuit.phases}, ${circuit.breakerAmps} A ${circuit.phases.length}P`;
    pen.text(shortened(tag, area.x + room - x, small, pen.lettering), [x + 2, y], { size: small });
  }
  const second =
    circuit === undefined
      ? ''
      : `${circuitConductors(circuit, byId(plan.conduits))}, ${circuit.conductor.metal} ${circuit.conductor.insulation}; drop ${figure(circuit.branchDropPercent, 2)}% of branch, ${figure(circuit.worstDropPercent, 2)}% in all; ${run.bends} bends, ${figure(run.bendDegrees, 0)}°`;
  pen.text(shortened(second, area.width, small, pen.lettering), [area.x, y - small * LEADING], { size: small });
}

function drawGrade(pen: Pen, at: OnSheet, end: number, left: number, { thin }: LabelGround): void {
  const [, y] = at({ along: 0, z: 0 });
  const [x] = at({ along: end, z: 0 });
  pen.line(
    [
      [left - 8, y],
      [x + 14, y],
    ],
    PENS.existing,
  );
  thin.take({ x: left - 8, y: y - 3.5, width: x + 22 - left, height: 4 });
  for (let tick = left - 4; tick < x + 12; tick += 9)
    pen.line(
      [
        [tick, y],
        [tick - 3, y - 3],
      ],
      PENS.existingHair,
    );
}

function drawProfile(pen: Pen, strip: RunStrip, at: OnSheet, ground: LabelGround): void {
  strip.legs.forEach((kind, i) => {
    const points = [at(strip.points[i]!), at(strip.points[i + 1]!)];
    pen.line(points, kind === 'tap' ? TAP : kind === 'underground' ? BURIED : RAIL);
    takeAlong(ground.heavy, points, 1);
  });
  for (const { at: bend } of strip.bends) pen.circle(at(bend), 1.6, null, BLACK);
  if (strip.retractor !== null) {
    const [box, hung] = [at(strip.points.at(-1)!), at(strip.retractor)];
    pen.line([box, hung], TAP);
    takeAlong(ground.heavy, [box, hung], 1);
  }
}

function drawOpenings(pen: Pen, strip: RunStrip, at: OnSheet, { hard }: LabelGround): void {
  const mark = ([x, y]: Point2, half: number): void =>
    hard.take({ x: x - half, y: y - half, width: 2 * half, height: 2 * half });
  const entry = at(strip.points[0]!);
  pen.rectangle({ x: entry[0] - 5, y: entry[1] - 8, width: 5, height: 16 }, inkOf('equipment'));
  mark(entry, 5);
  for (const { kind, at: place } of strip.openings) {
    if (kind === 'handhole') {
      const shaft = handholeOnStrip(at(place), at({ along: place.along, z: 0 })[1]);
      pen.rectangle(shaft, inkOf('pullPoints'));
      hard.take(shaft);
      continue;
    }
    drawSymbol(pen, kind, at(place), SYMBOL, kind === 'box' ? 'drops' : 'pullPoints');
    mark(at(place), 4);
  }
  const box = at(strip.points.at(-1)!);
  if (strip.retractor !== null) {
    drawSymbol(pen, 'retractor', at(strip.retractor), SYMBOL, 'drops');
    mark(at(strip.retractor), 6);
  }
  drawSymbol(pen, 'box', box, SYMBOL, 'drops');
  mark(box, 4);
}

/** A handhole from under its conduits up to its cover at grade. */
const handholeOnStrip = ([x, y]: Point2, grade: number): Area => ({
  x: x - 5,
  y: y - 4,
  width: 10,
  height: Math.max(8, grade - y + 4),
});

/** Elevations of the entry, the level legs and the box at the left, where they do not run into one another. */
function drawElevations(pen: Pen, strip: RunStrip, at: OnSheet, x: number, site: Site, { hard }: LabelGround): void {
  const { small } = pen.lettering.sizes;
  const taken: number[] = [];
  const levels = strip.points.slice(1).flatMap((point, i) => {
    const before = strip.points[i]!;
    return Math.abs(point.z - before.z) < 0.01 ? [{ z: point.z, long: point.along - before.along }] : [];
  });
  levels.sort((a, b) => b.long - a.long);
  for (const z of [...levels.map((level) => level.z), strip.points[0]!.z, strip.points.at(-1)!.z, 0]) {
    const [, y] = at({ along: 0, z });
    if (taken.some((other) => Math.abs(other - y) < small)) continue;
    taken.push(y);
    const words = printLength(z, site.units);
    const width = pen.lettering.width(words, small);
    hard.take({ x: x + STRIP_SIDES.left - 14 - width, y: y - small * 0.4, width: width + 2, height: small * 0.8 });
    pen.text(words, [x + STRIP_SIDES.left - 14, y - small * 0.35], {
      size: small,
      anchor: 'right',
    });
  }
}

/** Plan distances between the marks of a strip, under its ground. */
function drawDistances(pen: Pen, strip: RunStrip, at: OnSheet, y: number, site: Site): void {
  const feet = [
    0,
    ...strip.openings.map((opening) => opening.at.along),
    ...strip.bends.map((bend) => bend.at.along),
    strip.points.at(-1)!.along,
  ].sort((a, b) => a - b);
  const marks = feet
    .filter((along, i) => i === 0 || along - feet[i - 1]! > 0.02)
    .map((along) => ({ on: at({ along, z: 0 })[0], feet: along }));
  if (marks.length < 2) return;
  const string = { axis: 'x', at: y, marks } as const;
  drawDimensions(pen, string, stringFigures(string, site.units, pen.lettering));
}
