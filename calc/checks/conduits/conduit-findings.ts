import { kept, keptByKey } from '../../../routing/kept/kept.ts';
import { bendsOf } from '../../../routing/network/bends.ts';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import type { Design } from '../../branches/design.ts';
import { drawnPath } from '../../branches/drawn-path.ts';
import type { HomeRun } from '../../branches/home-runs/home-run.ts';
import type { NamedHomeRun } from '../../branches/named.ts';
import { isEasyPull, type PullTension, pullTension } from '../../branches/pulls/pull-tension.ts';
import type { ConduitWay } from '../../branches/way.ts';
import type { Conduit } from '../../plan-file/branches.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { expansionFindings } from './expansion-findings.ts';
import { conduitPull } from './pull-findings.ts';
import { isPastLimits, type LimitGround, limitTroubles, type Trouble } from './pull-limits.ts';
import { mayHavePullingNotes, pullingNotes } from './pulling-notes.ts';

/**
 * Over-full conduits, too many degrees of bend, too long and too hard pulls, what to mind in pulling, and expansion.
 * Conduits side by side that the same pull points would cure are one finding, the worst of them first.
 */
export function conduitFindings(
  homeRuns: readonly NamedHomeRun[],
  design: Design,
  ground: LimitGround,
): readonly Finding[] {
  const groups = new Map<string, Trouble[]>();
  for (const homeRun of homeRuns) {
    if (isQuiet(design, homeRun.homeRun)) continue;
    for (const trouble of troubles(homeRun, design, ground)) {
      const key = `${trouble.finding.rule}${trouble.cure}`;
      const others = trouble.cure === '' ? undefined : groups.get(key);
      if (others === undefined) groups.set(trouble.cure === '' ? `${key} ${trouble.finding.about[0]}` : key, [trouble]);
      else others.push(trouble);
    }
  }
  return [...[...groups.values()].map(merged), ...expansionFindings(homeRuns, design, ground.units)];
}

function merged(group: readonly Trouble[]): Finding {
  const [first] = [...group].sort((a, b) => (b.finding.value ?? 0) - (a.finding.value ?? 0));
  const { finding, words } = first!;
  if (group.length === 1) return { ...finding, says: finding.says + words };
  const others = group.filter((one) => one !== first).map((one) => one.finding);
  return {
    ...finding,
    about: [...new Set([...finding.about, ...others.flatMap(({ about }) => about)])],
    says: `${finding.says} ${others.length === 1 ? 'So is one conduit' : `So are ${others.length} conduits`} beside it.${words}`,
  };
}

/**
 * Whether a look at the pieces by themselves settles that there is nothing to say of the conduits, as there mostly is not:
 * of home runs that are alike, a look at one.
 */
const isQuiet = keptByKey(
  ({ gauge }: HomeRun) => gauge,
  (design: Design, homeRun: HomeRun): boolean => homeRun.pieces.every((_, i) => isEasy(homeRun, i, design)),
);

function isEasy({ ways, pieces, packings }: HomeRun, i: number, { tables, rules }: Design): boolean {
  const piece = pieces[i]!;
  const way = ways[piece.along]!;
  const { tradeSize, conductors, fits } = packings[i]!;
  const pulled = { length: piece.to - piece.from, bendDegrees: piece.bendDegrees, conductors };
  return (
    fits &&
    piece.start.kind !== 'coupling' &&
    piece.end.kind !== 'coupling' &&
    piece.start.place === undefined &&
    piece.end.place === undefined &&
    !isPastLimits(pulled, rules) &&
    (tradeSize === null ||
      isEasyPull(tables, pulled, rules.metal) ||
      isSlight(pullTension(tables, drawnPath(way, piece), tradeSize, conductors, rules.metal))) &&
    !mayHavePullingNotes(conductors, upAndDown(way), tables, rules.metal)
  );
}

/** A pull well within its limits, so that one of the same lengths and turns elsewhere is, rounding aside. */
const isSlight = ({ tension, mostTension, sidewall, mostSidewall }: PullTension): boolean =>
  tension <= mostTension * (1 - 1e-6) && sidewall <= mostSidewall * (1 - 1e-6);

/** Feet that a way goes up and down in all. */
function upAndDown({ points }: ConduitWay): number {
  let feet = 0;
  for (let i = 1; i < points.length; i++) feet += Math.abs(points[i]![2] - points[i - 1]![2]);
  return feet;
}

/** What is to be said of the conduits of a home run that is not quiet. */
const troubles = kept((homeRun: NamedHomeRun, design: Design, ground: LimitGround): readonly Trouble[] => {
  const { tables, rules } = design;
  return homeRun.conduits.flatMap((conduit, i) => {
    const found: Trouble[] = [];
    const say = (finding: Finding): void => {
      found.push({ finding, cure: '', words: '' });
    };
    if (!homeRun.homeRun.packings[i]!.fits) say(overfull(conduit, tables));
    if (homeRun.homeRun.pieces[i]!.start.kind !== 'coupling') {
      const whole = pulledWhole(homeRun, i);
      if (isPastLimits(whole, rules))
        found.push(...limitTroubles({ ...whole, what: between(whole), about: about(whole) }, design, ground));
      const hard = conduitPull(whole, rules.metal, tables);
      if (hard !== null) say(hard);
    }
    const { method, tradeSize, path, conductors } = conduit;
    const named = { what: () => `Conduit ${conduit.id}`, about: () => about(conduit) };
    const pulled = { ...named, method, tradeSize, path, conductors, metal: rules.metal };
    for (const note of pullingNotes(pulled, tables, ground.units)) say(note);
    return found;
  });
});

/** A conduit with those that are coupled on to it in the ground: they are pulled as one. */
function pulledWhole({ homeRun: { pieces }, conduits }: NamedHomeRun, first: number): Conduit {
  let whole = conduits[first]!;
  for (let end = pieces[first]!.end; end.kind === 'coupling'; ) {
    const next = pieces.findIndex(({ start }) => start === end);
    if (next < 0) break;
    const { path, length, to, raceways } = conduits[next]!;
    const joined = [...whole.path, ...path.slice(1)];
    const bends = bendsOf(joined);
    whole = {
      ...whole,
      to,
      path: joined,
      length: whole.length + length,
      bends: bends.length,
      bendDegrees: bends.reduce((sum, { degrees }) => sum + degrees, 0),
      raceways: [...new Set([...whole.raceways, ...raceways])],
    };
    end = pieces[next]!.end;
  }
  return whole;
}

const about = (conduit: Conduit): readonly string[] => [conduit.id, ...conduit.circuits, ...conduit.raceways];

const between = (conduit: Conduit): string => `Conduit ${conduit.id}, ${conduit.from} to ${conduit.to},`;

function overfull(conduit: Conduit, tables: CodeTables): Finding {
  const { method, tradeSize, fillPercent, fillLimit } = conduit;
  return {
    severity: 'fail',
    rule: 'conduit-fill',
    about: about(conduit),
    says: `${between(conduit)} would be ${fillPercent.toFixed(1)}% full in the largest ${method}, ${tradeSize} in.; the limit is ${fillLimit}%. Put its circuits in more conduits, or shorten the branch so that smaller conductors do.`,
    value: fillPercent,
    limit: fillLimit,
    unit: '%',
    source: tables.fill.source,
  };
}
