import { distance } from '../../../../routing/plane/space.ts';
import type { Point3, Site } from '../../../../routing/site/site.ts';
import { siteAsBuilt } from '../../../plan/as-built.ts';
import { issueNames } from '../../../plan/issue-names.ts';
import { plan } from '../../../plan/plan.ts';
import type { Plan } from '../../../plan/plan-shape.ts';
import type { PlannedSite } from '../kit/work-record.ts';

/**
 * The lot as it was built, planned; the same objects where nothing was measured. Circuits, conduits and boxes keep the
 * places and names that they have as drawn: what was pulled is not grouped anew because a box hangs elsewhere.
 */
export function asBuiltLot(site: Site, planned: Plan): PlannedSite {
  const built = siteAsBuilt(site);
  const isSame =
    built === site ||
    (['drops', 'pullpoints', 'columns', 'equipment'] as const).every((list) => built[list] === site[list]);
  if (isSame) return { site, plan: planned };
  const { circuits = {}, conduits = {}, boxes = {} } = issueNames(site, planned);
  const issued: Site['issued'] = {
    circuits: new Map(Object.entries(circuits)),
    conduits: new Map(Object.entries(conduits)),
    boxes: new Map(Object.entries(boxes)),
  };
  const kept: Site = { ...built, issued };
  return { site: kept, plan: plan(kept) };
}

/** Something that stands elsewhere than it is drawn, feet. */
export interface MovedPlace {
  readonly of: string;
  readonly drawn: Point3;
  readonly built: Point3;
  readonly away: number;
}

/** Less than this, feet, is where it is drawn: 1/16 in. */
const SAME = 1 / 192;

/** Places of a lot as built that are not where it is drawn, both laid alike. */
export function movedPlaces(drawn: Site, built: Site): readonly MovedPlace[] {
  const moved = (of: string, a: readonly number[] | undefined, b: readonly number[] | undefined): MovedPlace[] => {
    if (!a || !b) return [];
    const [from, to] = [spot(a), spot(b)];
    const away = distance(from, to);
    return away < SAME ? [] : [{ of, drawn: from, built: to, away }];
  };
  const at = (list: 'pullpoints' | 'columns' | 'equipment') =>
    drawn[list].flatMap((one, i) => moved(one.id, one.at, built[list][i]?.at));
  return [
    ...drawn.drops.flatMap((drop, i) => {
      const now = built.drops[i];
      const box = moved(drop.id, drop.box, now?.box);
      const retractor = moved(drop.id, drop.retractor, now?.retractor);
      // A box that took its retractor along is one place.
      return box.length > 0 && retractor.length > 0 && Math.abs(box[0]!.away - retractor[0]!.away) < SAME
        ? box
        : [...box, ...retractor];
    }),
    ...at('pullpoints'),
    ...at('columns'),
    ...at('equipment'),
  ];
}

const spot = ([x, y, z = 0]: readonly number[]): Point3 => [x!, y!, z];
