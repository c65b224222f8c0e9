import { addTo } from '../../../routing/lists/grouping.ts';
import { holderOf } from '../../../routing/network/support/holders.ts';
import { placeOn } from '../../../routing/network/support/share-out.ts';
import { type Steel, steelOf } from '../../../routing/network/support/steel-near.ts';
import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import type { Charger, Drop, Member, Point2, Point3, Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import type { PlannedBox } from '../../plan-file/branches.ts';
import {
  boxOfFeet,
  type Callout,
  type Detail,
  type DetailCircle,
  type DetailLine,
  edges,
  fromBase,
  grade,
  segment,
  typicalOf,
} from './detail.ts';

/** Ways to hang that differ are drawn apart, up to this many. */
const MOST = 2;

/** How boxes and retractors hang: a detail for each way, the most frequent first. */
export function dropDetails(site: Site, plan: Plan): readonly Detail[] {
  const steel = steelOf(site.members);
  const boxes = new Map(plan.boxes.flatMap((box) => (box.kind === 'drop' ? [[box.id, box] as const] : [])));
  const groups = new Map<string, Drop[]>();
  for (const drop of site.drops) {
    if ((drop.mount ?? 'overhead') !== 'overhead') continue;
    const key = wayOf(drop, steel, site.rules.hangReach);
    addTo(groups, key, drop);
  }
  return [...groups.values()]
    .sort((a, b) => b.length - a.length)
    .slice(0, MOST)
    .map((drops) => dropDetail(site, drops, steel, boxes.get(drops[0]!.id)));
}

/** Drops that hang alike to the quarter inch have one key. */
function wayOf({ box, retractor, cord, restHeight }: Drop, steel: Steel, reach: number): string {
  const round = (feet: number): number => Math.round(feet * 48);
  const holder = holderOf(box, steel, reach);
  const over = holder === null ? null : placeOn(holder, box);
  return [
    box[2],
    retractor?.[2] ?? -1,
    retractor === undefined ? 0 : inPlan(box, retractor),
    cord,
    restHeight ?? -1,
    over?.[2] ?? -1,
    over === null ? 0 : inPlan(box, over),
  ]
    .map(round)
    .join(' ');
}

const inPlan = (a: Point3, b: Point3): number => Math.hypot(b[0] - a[0], b[1] - a[1]);

/** Symbols of what has no size in the file, feet. */
const RETRACTOR = 0.3;
const CONNECTOR = [0.12, 0.45] as const;
/** The drawing goes on so far to both sides of what hangs. */
const BESIDE = 1.6;

function dropDetail(site: Site, drops: readonly Drop[], steel: Steel, opened: PlannedBox | undefined): Detail {
  const drop = drops[0]!;
  const { rules, units } = site;
  const { box, retractor } = drop;
  const holder = holderOf(box, steel, rules.hangReach);
  const other = retractor === undefined ? null : holderOf(retractor, steel, rules.hangReach);
  const along = lookingAlong(box, retractor, holder);
  const across = ([x, y]: Point3): number => (x - box[0]) * along[0] + (y - box[1]) * along[1];
  const onSheet = (at: Point3): Point2 => [across(at), at[2]];
  const half = boxFeet(opened) / 2;
  const lines: DetailLine[] = [
    edges(boxOfFeet(-half, box[2] - half, half, box[2] + half), 'edge'),
    segment([-half - 0.08, box[2]], [half + 0.08, box[2]], 'axis'),
    ...hanging(holder, [0, box[2] + half], box, onSheet),
  ];
  const circles: DetailCircle[] = [];
  const chargers = site.chargers.filter((charger) => charger.drop === drop.id);
  const callouts: Callout[] = [
    { at: [half, box[2]], text: `${drop.id}: ${boxWords(opened)}${racewayWords(opened)}` },
    ...memberCallout(holder, box, onSheet),
  ];
  const marks = [{ at: box[2], from: -half }];
  const start: Point2 = retractor === undefined ? [0, box[2] - half] : [across(retractor), retractor[2] - RETRACTOR];
  if (retractor !== undefined) {
    const at = onSheet(retractor);
    circles.push({ at, radius: RETRACTOR, ink: 'edge' });
    const crown: Point2 = [at[0], at[1] + RETRACTOR];
    // Right under its box, its hanger goes up behind that.
    const isBehind = Math.abs(at[0]) < half + 0.1 && at[1] < box[2];
    lines.push(
      ...(isBehind ? [segment(crown, [at[0], box[2] - half], 'hidden')] : hanging(other, crown, retractor, onSheet)),
    );
    if (!isBehind) lines.push(...cordBetween([0, box[2] - half], at));
    callouts.push({
      at: [at[0] + RETRACTOR, at[1]],
      text: 'retractor with a safety cable of its own; symbol, not its size',
    });
    if (other !== null && other !== holder) callouts.push(...memberCallout(other, retractor, onSheet));
    marks.push({ at: retractor[2], from: at[0] - RETRACTOR });
  }
  if (drop.restHeight !== undefined) {
    const rest = drop.restHeight;
    lines.push(segment(start, [start[0], rest + CONNECTOR[1]], 'edge'));
    lines.push(edges(boxOfFeet(start[0] - CONNECTOR[0], rest, start[0] + CONNECTOR[0], rest + CONNECTOR[1]), 'edge'));
    callouts.push({ at: [start[0] + CONNECTOR[0], rest + 0.2], text: 'connector at rest' });
    marks.push({ at: rest, from: start[0] - CONNECTOR[0] });
  } else lines.push(segment(start, [start[0], Math.max(1, start[1] - 2)], 'hidden'));
  callouts.push({
    at: [start[0], (start[1] * 2 + (drop.restHeight ?? start[1] - 2)) / 3],
    text: cordWords(drop, chargers, site),
  });
  const ends = [...lines.flatMap((line) => line.points.map(([x]) => x)), ...circles.map(({ at }) => at[0])];
  const [low, high] = [Math.min(...ends) - BESIDE, Math.max(...ends) + BESIDE];
  const ground = grade(low, high, 0.5);
  const top = [holder, other].flatMap((one) => (one === null ? [] : [memberLine(one, box, low, high, onSheet)]));
  for (const one of new Map(top.map((line) => [JSON.stringify(line), line])).values()) lines.push(one);
  if (holder !== null) marks.push({ at: onSheet(placeOn(holder, box))[1], from: 0 });
  const { restHeight } = rules;
  lines.push(segment([low, restHeight.high], [high, restHeight.high], 'axis'));
  callouts.push({
    at: [high, restHeight.high],
    text: `highest rest that the site allows, ${printLength(restHeight.high, units)}`,
  });
  return {
    kind: 'drop',
    title: `Box${retractor === undefined ? '' : ' and retractor'} overhead, ${typicalOf(drops.map(({ id }) => id))}`,
    of: drops.map(({ id }) => id),
    regions: ground.regions,
    lines: [...ground.lines, ...lines],
    circles,
    dimensions: [
      ...fromBase('left', { at: 0, from: low }, marks),
      ...(retractor === undefined
        ? []
        : fromBase('bottom', { at: 0, from: box[2] - half }, [{ at: across(retractor), from: retractor[2] }])),
    ],
    callouts,
    notes: [
      holder === null
        ? 'Nothing is drawn that it hangs from: its support is designed by others.'
        : 'Attachment to the steel and its capacity: checked by the structural engineer for the loads that hang there. No drilling of primary steel without their word.',
      'Retractor, safety cable and strain relief by their instructions; the retractor is matched to the weight of the cord.',
    ],
  };
}

/** Which way the picture looks: so that box and retractor, else the way to the steel, lie in it. */
function lookingAlong(box: Point3, retractor: Point3 | undefined, holder: Member | null): Point2 {
  const to = (at: Point3): Point2 | null => {
    const far = inPlan(box, at);
    return far > 0.1 ? [(at[0] - box[0]) / far, (at[1] - box[1]) / far] : null;
  };
  const aside = holder === null ? null : to(placeOn(holder, box));
  const along =
    holder === null ? null : to([box[0] + holder.to[0] - holder.from[0], box[1] + holder.to[1] - holder.from[1], 0]);
  return (retractor && to(retractor)) ?? aside ?? along ?? [1, 0];
}

/** From the steel down to what hangs. */
function hanging(
  holder: Member | null,
  top: Point2,
  at: Point3,
  onSheet: (at: Point3) => Point2,
): readonly DetailLine[] {
  if (holder === null) return [segment(top, [top[0], top[1] + 1], 'hidden')];
  const [x, z] = onSheet(placeOn(holder, at));
  const aside = Math.abs(x - top[0]) > 0.1;
  return aside
    ? [segment(top, [top[0], z], 'edge'), segment([top[0], z], [x, z], 'conduit')]
    : [segment(top, [top[0], z], 'edge')];
}

/** A member as a line across the picture where it runs along it, else its place. */
function memberLine(
  member: Member,
  at: Point3,
  low: number,
  high: number,
  onSheet: (at: Point3) => Point2,
): DetailLine {
  const [x, z] = onSheet(placeOn(member, at));
  const [[ax, az], [bx, bz]] = [onSheet(member.from), onSheet(member.to)];
  const whole = Math.hypot(member.to[0] - member.from[0], member.to[1] - member.from[1]);
  if (whole === 0 || Math.abs(bx - ax) < 0.5 * whole) return segment([x - 0.4, z], [x + 0.4, z], 'cut');
  const [from, to] = [Math.max(low, Math.min(ax, bx)), Math.min(high, Math.max(ax, bx))];
  const up = (to2: number): number => az + ((bz - az) * (to2 - ax)) / (bx - ax);
  return segment([from, up(from)], [to, up(to)], 'cut');
}

const memberCallout = (holder: Member | null, at: Point3, onSheet: (at: Point3) => Point2): readonly Callout[] =>
  holder === null
    ? []
    : [{ at: onSheet(placeOn(holder, at)), text: `${holder.id}: line of the steel, size by others` }];

/** The cord from its box to its retractor, with a little slack. */
function cordBetween(from: Point2, to: Point2): readonly DetailLine[] {
  const side = Math.sign(to[0] - from[0]);
  const end: Point2 = [to[0] - side * RETRACTOR, to[1]];
  const low = Math.min(from[1], end[1]) - 0.25;
  return [{ points: [from, [(from[0] * 3 + end[0]) / 4, low], [(from[0] + end[0] * 3) / 4, low], end], ink: 'thin' }];
}

/** Feet to a side of the box: as the plan has it, else the smallest there is. */
function boxFeet(box: PlannedBox | undefined): number {
  if (box?.length != null) return box.length / 12;
  return (box?.box?.startsWith('4-11/16') ? 4.6875 : box === undefined || box.box !== null ? 4 : 6) / 12;
}

const boxWords = (box: PlannedBox | undefined): string =>
  box === undefined
    ? 'box'
    : box.length !== null
      ? `box ${box.length} in or longer`
      : (box.box ?? `box of ${Math.ceil(box.volume ?? 0)} cu in`);

const racewayWords = (box: PlannedBox | undefined): string =>
  box === undefined || box.raceways.length === 0 ? '' : `, ${[...new Set(box.raceways)].join(' and ')}`;

function cordWords({ cord }: Drop, chargers: readonly Charger[], { units }: Site): string {
  const [charger] = chargers;
  const amps = charger === undefined ? '' : `, ${charger.amps} A`;
  return `cord, ${printLength(cord, units)} usable${amps}${chargers.length > 1 ? `, ${chargers.length} of them` : ''}`;
}
