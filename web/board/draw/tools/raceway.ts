import { bendsOf } from '../../../../routing/network/bends.ts';
import { steelOver, turnBetween } from '../../../../routing/network/hang-under.ts';
import { distance } from '../../../../routing/plane/space.ts';
import { newId } from '../../../../routing/site/new-id.ts';
import { printLength } from '../../../../routing/site/numbers/feet-inches.ts';
import type { Point3, Raceway, Site } from '../../../../routing/site/site.ts';
import { counted } from '../../../../routing/words/counted.ts';
import type { ListName } from '../../../document/change/element-lists.ts';
import { addElements } from '../../../document/edits/add.ts';
import type { BoardDraft, DrawTool, Ground, Spot } from '../draft.ts';
import type { RacewayOptions } from '../options.ts';

/** What a raceway joins: at its elevation, by going up or down to it. */
const JOINS: ReadonlySet<ListName> = new Set(['raceways', 'equipment', 'pullpoints', 'drops']);
const LEVEL = 0.01;

/** A raceway vertex by vertex. It runs level or under the steel, and goes up or down at the ends to what it joins. */
export const racewayTool: DrawTool<RacewayOptions> = {
  shape: 'path',
  atOnce: false,
  list: 'raceways',
  added,
  edit: (ground, draft, options) => {
    const path = pathOf(ground, draft, options);
    if (path.length < 2) return null;
    const { method, place, surface } = options;
    const raceway: Raceway = {
      id: newId(ground.file, 'R'),
      path: path as Raceway['path'],
      method,
      place,
      // Asphalt is what a file means that names none.
      ...(place === 'underground' && surface !== 'asphalt' && { surface }),
    };
    return addElements(ground.file, 'raceways', [raceway]);
  },
  words: (ground, draft, options) => {
    const { site } = ground;
    const path = pathOf(ground, draft, options);
    if (path.length < 2) return path.length === 1 ? [`at ${printLength(path[0]![2], site.units)}`] : [];
    return [lengthWords(path, site), bendWords(path, site)];
  },
  advice: (draft, { elevation }) =>
    draft.spots.length === 0
      ? {
          action: 'Raceway',
          next: 'Press where it begins: an entry, a raceway, or open ground.',
          keys: [
            ['Z', 'elevation'],
            ['Esc', 'select'],
          ],
        }
      : {
          action: 'Raceway',
          next: `Press each turn${elevation < 0 ? ' (below grade)' : ''}; finish with Enter.`,
          keys: [
            ['0-9', 'length'],
            ['Z', 'up or down to'],
            ['Enter', 'finish'],
            ['Backspace', 'back'],
          ],
        },
  raised: (draft, z, options) => {
    const last = draft.spots.at(-1);
    // Typed before it begins, the elevation is that of a level run.
    if (!last) return { draft, options: { ...options, elevation: z, belowMembers: null } };
    const spots =
      Math.abs((last.z ?? options.elevation) - z) < LEVEL
        ? draft.spots
        : [...draft.spots, { at: last.at, z, ref: null }];
    return { draft: { ...draft, spots }, options: { ...options, elevation: z } };
  },
};

/**
 * The vertices that a new place adds: up or down to the run's elevation first, and at last to what it joins. Begun on a
 * member, or led from what it joins to one, the run hangs below the steel and follows its slope; in the open it keeps
 * the elevation that it has there. A run that was begun in the open, or whose elevation is typed, stays level.
 */
function added({ site }: Ground, { spots }: BoardDraft, spot: Spot, options: RacewayOptions): readonly Spot[] {
  const joined = isJoined(spot);
  const last = spots.at(-1);
  const hung = joined || (last && !last.hangs && !isJoined(last)) ? null : hungAt(site, last, spot, options);
  if (!last) return [hung ?? { ...spot, z: joined ? spot.z : options.elevation }];
  const flat = Math.hypot(last.at[0] - spot.at[0], last.at[1] - spot.at[1]);
  if (flat < 0.02) return joined && Math.abs(spot.z! - last.z!) > LEVEL ? [{ ...spot }] : [];
  if (hung && last.hangs) return [...turnOf(site, last, hung, options), hung];
  // What is joined from above or below within the reach of a level run needs no way up and down again.
  const level = joined && Math.abs(spot.z! - last.z!) < LEVEL;
  const run = level || last.hangs ? last.z! : (hung?.z ?? options.elevation);
  const carried = last.hangs || hung ? { hangs: true as const } : {};
  const way: Spot[] = [];
  if (Math.abs(last.z! - run) > LEVEL) way.push({ at: last.at, z: run, ref: null, ...carried });
  way.push({ at: spot.at, z: run, ref: spot.ref, ...carried });
  if (joined && Math.abs(spot.z! - run) > LEVEL) way.push({ at: spot.at, z: spot.z, ref: spot.ref });
  return way;
}

const isJoined = ({ ref, z, hangs }: Spot): boolean => !hangs && ref !== null && JOINS.has(ref.list) && z !== null;

/** A place that lies on a member, or on the one that the last did, as far below its steel as the run hangs; else null. */
function hungAt({ members }: Site, last: Spot | undefined, spot: Spot, options: RacewayOptions): Spot | null {
  const { place, belowMembers } = options;
  if (place !== 'overhead' || belowMembers === null) return null;
  const ref = spot.ref ?? last?.ref;
  if (ref?.list !== 'members') return null;
  const member = members.find(({ id }) => id === ref.id);
  const steel = member && steelOver(members, member, spot.at);
  if (steel === null || steel === undefined || steel - belowMembers <= 0) return null;
  return { at: spot.at, z: steel - belowMembers, ref, hangs: true };
}

/** The vertex where the steel turns up or down between two places that hang under it; none where it runs straight. */
function turnOf({ members }: Site, last: Spot, next: Spot, { belowMembers }: RacewayOptions): readonly Spot[] {
  const memberOf = ({ ref }: Spot) => members.find(({ id }) => ref?.list === 'members' && id === ref.id);
  const [a, b] = [memberOf(last), memberOf(next)];
  const at = a && b && a !== b ? turnBetween(a, b, last.at, next.at) : null;
  const steel = at && steelOver(members, b!, at);
  return at && steel ? [{ at, z: steel - belowMembers!, ref: next.ref, hangs: true }] : [];
}

/** The vertices of a draft, with what the place under the hand would add. */
function pathOf(ground: Ground, draft: BoardDraft, options: RacewayOptions): Point3[] {
  const next = draft.next && !draft.whole ? added(ground, draft, draft.next, options) : [];
  return [...draft.spots, ...next].map(({ at, z }): Point3 => [at[0], at[1], z ?? options.elevation]);
}

function lengthWords(path: readonly Point3[], { units }: Site): string {
  let length = 0;
  for (let i = 1; i < path.length; i++) length += distance(path[i - 1]!, path[i]!);
  const rise = path.at(-1)![2] - path.at(-2)![2];
  const riser = Math.abs(rise) > LEVEL ? `, ${rise > 0 ? 'up' : 'down'} ${printLength(Math.abs(rise), units)}` : '';
  return `${printLength(length, units)} at ${printLength(path.at(-1)![2], units)}${riser}`;
}

/** Bends since the last pull point on the path, against the limit between pull points. */
function bendWords(path: readonly Point3[], { pullpoints, equipment, rules }: Site): string {
  const pulls = [...pullpoints, ...equipment.map(({ id, entry }) => ({ id, at: entry }))];
  const named = (at: Point3): string | undefined => pulls.find((pull) => distance(pull.at, at) < 0.1)?.id;
  let from = 0;
  let since = 'its start';
  path.forEach((at, i) => {
    const pull = named(at);
    if (pull === undefined || i === path.length - 1) return;
    from = i;
    since = pull;
  });
  const bends = bendsOf(path.slice(from));
  const degrees = Math.round(bends.reduce((sum, bend) => sum + bend.degrees, 0));
  const over = degrees > rules.bendLimit ? ': pull point needed' : '';
  return `${counted(bends.length, 'bend')}, ${degrees}° of ${rules.bendLimit}° since ${since}${over}`;
}
