import { keptByKey } from '../../../routing/kept/kept.ts';
import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import { printTemperatureRange } from '../../../routing/site/numbers/temperature.ts';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import { siteRule } from '../../../routing/site/rules/rule-notes.ts';
import type { Units } from '../../../routing/site/schema/vocabulary.ts';
import type { Design } from '../../branches/design.ts';
import { expansion } from '../../branches/expansion.ts';
import type { HomeRun } from '../../branches/home-runs/home-run.ts';
import { type NamedHomeRun, racewaysBetween } from '../../branches/named.ts';
import { longestExposed } from '../../branches/pulls/straights.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { methodRaceway } from '../../tables/conductor-of.ts';
import { cited } from '../../tables/sections.ts';

/** Steel and aluminum that change so much, inches, are spoken of. The code sets no figure: common practice, no source. */
const METAL_MOVES = 1;

interface Change {
  readonly material: 'PVC' | 'metal';
  readonly feet: number;
  readonly change: number;
}

/** A piece of a home run that moves. */
interface Moving extends Change {
  readonly of: NamedHomeRun;
  readonly piece: number;
}

/**
 * Exposed straights that change enough in length over the site's temperature range to need expansion fittings, in one
 * note for the plastic conduits of a piece of equipment, whose fittings the takeoff counts, and one for its metal ones.
 */
export function expansionFindings(homeRuns: readonly NamedHomeRun[], design: Design, units: Units): readonly Finding[] {
  const moving: Moving[] = [];
  for (const of of homeRuns)
    changesOf(design, of.homeRun).forEach((one, piece) => {
      if (one !== null) moving.push({ material: one.material, feet: one.feet, change: one.change, of, piece });
    });
  if (moving.length === 0) return NOTHING;
  return (['PVC', 'metal'] as const).flatMap((material) => {
    const own = moving.filter((one) => one.material === material).sort((a, b) => b.change - a.change);
    return own.length === 0 ? [] : [findingOf(own, design, units)];
  });
}

const NOTHING: readonly Finding[] = [];
const NO_CHANGE: readonly (Change | null)[] = [];

/** What moves of each piece of a home run, once for those that are alike; null where it is too little to speak of. */
const changesOf = keptByKey(
  ({ gauge }: HomeRun) => gauge,
  ({ tables, rules }: Design, { pieces, ways }: HomeRun): readonly (Change | null)[] => {
    const changes = pieces.map((piece): Change | null => {
      if (piece.method === 'LFMC' || piece.method === 'tray') return null;
      const kind = methodRaceway(piece.method);
      const changeOf = (length: number): number =>
        expansion(tables, { material: kind, length, temperatureRangeC: rules.temperatureRangeC }).change;
      const least = kind === 'PVC' ? tables.expansion.fittingAt : METAL_MOVES;
      // No straight of it is longer than the whole, give or take rounding.
      if (changeOf(piece.to - piece.from) < least * (1 - 1e-9)) return null;
      const feet = longestExposed(piece, ways[piece.along]!);
      const change = changeOf(feet);
      return change < least ? null : { material: kind === 'PVC' ? 'PVC' : 'metal', feet, change };
    });
    return changes.every((one) => one === null) ? NO_CHANGE : changes;
  },
);

function findingOf(moving: readonly Moving[], { tables, rules }: Design, units: Units): Finding {
  const { material, feet, change, of: first, piece } = moving[0]!;
  const conduit = first.conduitIds[piece]!;
  const others = moving.length - 1;
  const also = others === 0 ? '' : ` So do ${others === 1 ? 'one other' : `${others} others`}, less.`;
  const does = `A straight of conduit ${conduit}, ${printLength(feet, units)} above ground, changes ${change.toFixed(2)} in. in length over ${printTemperatureRange(rules.temperatureRangeC)}.${also}`;
  return {
    severity: 'note',
    rule: 'expansion',
    about: [...aboutOf(moving)],
    says:
      material === 'PVC'
        ? `${does} Expansion fittings are in the takeoff; anchor between them, and set each for the temperature of the day.`
        : `${does} An expansion fitting belongs where it crosses a joint of the structure; none is in the takeoff.`,
    value: change,
    limit: material === 'PVC' ? tables.expansion.fittingAt : METAL_MOVES,
    unit: 'in',
    source:
      material === 'PVC' ? sourceOf(tables) : `${cited(tables, 'expansion')}; 1 in. is common practice, no source`,
  };
}

/** The conduits that move and the raceways that they lie on, each once. */
function aboutOf(moving: readonly Moving[]): ReadonlySet<string> {
  const ids = new Set<string>();
  for (const { of, piece } of moving) {
    ids.add(of.conduitIds[piece]!);
    const { along, from, to } = of.homeRun.pieces[piece]!;
    for (const id of racewaysBetween(of.homeRun.ways[along]!, from, to)) ids.add(id);
  }
  return ids;
}

const sourceOf = (tables: CodeTables): string => `${tables.expansion.source}; ${siteRule('temperatureRangeC')}`;
