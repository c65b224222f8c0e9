import { kept } from '../../routing/kept/kept.ts';
import { addTo } from '../../routing/lists/grouping.ts';
import { levelOver } from '../../routing/network/support/held-parts.ts';
import { memberBox, membersNear, type Steel, steelOf } from '../../routing/network/support/steel-near.ts';
import { boxOf, widened } from '../../routing/plane/box.ts';
import { boxIndex, positionsIn } from '../../routing/plane/box-index.ts';
import { between, distance, LENGTH_SLACK } from '../../routing/plane/space.ts';
import type { Column, Member, Point3 } from '../../routing/site/site.ts';
import { alongMember } from './loads.ts';

/** Where a member rests, and on what. */
export interface Rest {
  /** Along the member from its first end, feet. */
  readonly at: number;
  /** Id of the column or the member under it. */
  readonly on: string;
  readonly kind: 'column' | 'member';
}

/** Members meet, and stand on columns, within this in the plan, feet; and two rests nearer than this are one. */
const MEET = 0.5;
/** What carries a member is no farther under its line than this, nor higher than `OVER`, feet. Common practice, no source. */
const UNDER = 3;
const OVER = 0.5;

/**
 * Where members rest: on the columns under them; those on no column on the members that they cross or meet at their own
 * level or up to 3 ft lower, which stand on columns themselves, or on members that do, or lie lower. In order along each; a member for
 * which nothing is drawn to rest on is left out.
 */
export const restsOf = kept(
  (members: readonly Member[], columns: readonly Column[]): ReadonlyMap<string, readonly Rest[]> => {
    const steel = steelOf(members);
    const rank = new Map<string, number>();
    const rests = new Map<string, Rest[]>();
    const onColumns = boxIndex(columns, ({ at: [x, y], size }) =>
      widened({ minX: x, minY: y, maxX: x, maxY: y }, Math.max(...size) / 2 + MEET),
    );
    for (const member of members) {
      if (isUpright(member)) continue;
      const own = positionsIn(onColumns, memberBox(member)).flatMap((i) => restOnColumn(member, columns[i]!) ?? []);
      if (own.length === 0) continue;
      rank.set(member.id, 0);
      rests.set(member.id, own);
    }
    const crossings = new Map(
      members.filter((one) => !rank.has(one.id) && !isUpright(one)).map((one) => [one, crossingsOf(one, steel)]),
    );
    rankUp(crossings, rank);
    for (const [member, all] of crossings) {
      const mine = rank.get(member.id) ?? Number.POSITIVE_INFINITY;
      const own = all.filter(({ under, lower }) => {
        const its = rank.get(under.id) ?? Number.POSITIVE_INFINITY;
        return its < mine || (its === mine && lower > LEVEL);
      });
      if (own.length > 0)
        rests.set(
          member.id,
          own.map(({ at, under }): Rest => ({ at, on: under.id, kind: 'member' })),
        );
    }
    return new Map([...rests].map(([id, own]) => [id, inOrder(own)]));
  },
);

/** Lower by more than this is lower, feet. */
const LEVEL = 0.1;

const isUpright = ({ from, to }: Member): boolean => Math.hypot(to[0] - from[0], to[1] - from[1]) <= LENGTH_SLACK;

function restOnColumn(member: Member, { id, at, size, height }: Column): Rest | null {
  const share = nearestShare(member, at[0], at[1]);
  const place = between(member.from, member.to, share);
  if (Math.hypot(place[0] - at[0], place[1] - at[1]) > Math.max(...size) / 2 + MEET) return null;
  if (height !== undefined && (height < place[2] - UNDER || height > place[2] + OVER)) return null;
  return { at: alongMember(member, place), on: id, kind: 'column' };
}

interface Crossing {
  readonly under: Member;
  /** Along the member that may rest, feet. */
  readonly at: number;
  /** Feet by which the other is lower. */
  readonly lower: number;
}

/** The members that could carry one, by where it crosses or meets them in the plan. */
function crossingsOf(member: Member, steel: Steel): readonly Crossing[] {
  const { from, to } = member;
  const box = boxOf([
    [from[0], from[1]],
    [to[0], to[1]],
  ]);
  return membersNear(steel, box, MEET).flatMap((under): Crossing[] => {
    if (under === member || isUpright(under)) return [];
    const place = meetingPlace(member, under);
    if (place === null) return [];
    const lower = place[2] - levelOver(under, place);
    return lower > UNDER || lower < -OVER ? [] : [{ under, at: alongMember(member, place), lower }];
  });
}

/** Where a member crosses another in the plan, or an end of one comes to the other; null where they keep apart or run along. */
function meetingPlace(a: Member, b: Member): Point3 | null {
  const [ax, ay, bx, by] = [a.to[0] - a.from[0], a.to[1] - a.from[1], b.to[0] - b.from[0], b.to[1] - b.from[1]];
  const turn = ax * by - ay * bx;
  if (Math.abs(turn) < 0.1 * Math.hypot(ax, ay) * Math.hypot(bx, by)) return null;
  const [dx, dy] = [b.from[0] - a.from[0], b.from[1] - a.from[1]];
  const s = Math.min(1, Math.max(0, (dx * by - dy * bx) / turn));
  const place = between(a.from, a.to, s);
  const other = between(b.from, b.to, nearestShare(b, place[0], place[1]));
  return Math.hypot(place[0] - other[0], place[1] - other[1]) <= MEET ? place : null;
}

function nearestShare({ from, to }: Member, x: number, y: number): number {
  const [mx, my] = [to[0] - from[0], to[1] - from[1]];
  const along = ((x - from[0]) * mx + (y - from[1]) * my) / (mx * mx + my * my);
  return Math.min(1, Math.max(0, along));
}

/** Gives each member that crosses ranked ones the rank over the lowest of them, from the columns up. */
function rankUp(crossings: ReadonlyMap<Member, readonly Crossing[]>, rank: Map<string, number>): void {
  const crossed = new Map<string, Member[]>();
  for (const [member, all] of crossings) for (const { under } of all) addTo(crossed, under.id, member);
  let now = [...rank.keys()];
  for (let step = 1; now.length > 0; step++) {
    const next = new Set(now.flatMap((id) => (crossed.get(id) ?? []).map((one) => one.id)));
    now = [...next].filter((id) => !rank.has(id));
    for (const id of now) rank.set(id, step);
  }
}

/** In order along the member; of those in one place a column before a member, then by id. */
function inOrder(rests: readonly Rest[]): readonly Rest[] {
  const kinds = { column: 0, member: 1 };
  const sorted = [...rests].sort(
    (a, b) => kinds[a.kind] - kinds[b.kind] || a.at - b.at || (a.on < b.on ? -1 : a.on > b.on ? 1 : 0),
  );
  const own: Rest[] = [];
  for (const rest of sorted) if (own.every(({ at }) => Math.abs(at - rest.at) >= MEET)) own.push(rest);
  return own.sort((a, b) => a.at - b.at);
}

/** Feet of a member. */
export const memberLength = ({ from, to }: Pick<Member, 'from' | 'to'>): number => distance(from, to);
