import { changedPlaces } from '../../routing/lists/changed-places.ts';
import type { Finding } from '../../routing/site/finding.ts';
import type { Charger, Site } from '../../routing/site/site.ts';
import type { BoxVolts } from './box-volts.ts';

interface Over {
  readonly charger: string;
  readonly percent: number;
}

interface Known {
  readonly boxes: readonly (BoxVolts | null)[];
  readonly dark: readonly (BoxVolts | null)[];
  readonly percents: Float64Array;
}

const known = new WeakMap<readonly Charger[], Known>();

/** Drop to each box, percent, 0 where there is none: the greater of the two cases. */
function percentsOf(
  chargers: readonly Charger[],
  boxes: readonly (BoxVolts | null)[],
  dark: readonly (BoxVolts | null)[],
): Float64Array {
  const last = known.get(chargers);
  const percents = last?.percents ?? new Float64Array(boxes.length);
  const put = (i: number): void => {
    percents[i] = Math.max(boxes[i]?.totalDropPercent ?? 0, dark[i]?.totalDropPercent ?? 0);
  };
  if (last === undefined) for (let i = 0; i < boxes.length; i++) put(i);
  else {
    for (const i of changedPlaces(boxes, last.boxes)) put(i);
    if (dark !== boxes || last.dark !== last.boxes) for (const i of changedPlaces(dark, last.dark)) put(i);
  }
  known.set(chargers, { boxes, dark, percents });
  return percents;
}

/**
 * One finding for each piece of equipment with circuits whose drop, from nominal to the box, is past the limit, the worst
 * circuit first. Of the case with generation and that without, the one with more drop counts.
 */
export function totalDropFindings(
  site: Site,
  boxes: readonly (BoxVolts | null)[],
  dark: readonly (BoxVolts | null)[],
): readonly Finding[] {
  const limit = site.rules.dropLimit.total;
  const percents = percentsOf(site.chargers, boxes, dark);
  const over = new Map<string, Over[]>();
  for (let i = 0; i < percents.length; i++) {
    const percent = percents[i]!;
    if (percent <= limit) continue;
    const { id, from } = site.chargers[i]!;
    const list = over.get(from);
    if (list === undefined) over.set(from, [{ charger: id, percent }]);
    else list.push({ charger: id, percent });
  }
  return [...over].map(([equipment, list]) => finding(equipment, list, limit));
}

function finding(equipment: string, list: readonly Over[], limit: number): Finding {
  const worst = list.reduce((most, one) => (one.percent > most.percent ? one : most));
  const others = list.filter((one) => one !== worst).map(({ charger }) => charger);
  const more = others.length === 0 ? '' : ` ${list.length} circuits of ${equipment} are over it.`;
  return {
    severity: 'fail',
    rule: 'total-drop',
    about: [worst.charger, ...others, equipment],
    says: `${worst.charger} sees a drop of ${worst.percent.toFixed(2)}% from nominal to its box with everything on; the limit is ${limit}%.${more} Larger feeder conductors, a higher feeder voltage, load management, or equipment nearer by.`,
    value: worst.percent,
    limit,
    unit: '%',
    source: 'site rule dropLimit.total; NEC 2023 210.19 and 215.2 informational notes',
  };
}
