import { kept, steadyList } from '../../../routing/kept/kept.ts';
import { concatenating } from '../../../routing/kept/parts.ts';
import { addTo } from '../../../routing/lists/grouping.ts';
import type { Site } from '../../../routing/site/site.ts';
import type { PlannedBox } from '../../plan-file/branches.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { tradeSizeInches } from '../../tables/sizes.ts';
import type { Design } from '../design.ts';
import type { EquipmentBranches } from '../equipment-branches.ts';
import type { NamedHomeRun } from '../named.ts';
import { boxVolume, type Counted, isBoxConductor } from './box-volume.ts';
import type { OpeningLoad } from './opening-load.ts';
import { pullBox } from './pull-box.ts';

/**
 * The box for what one or several home runs bring to one place. Up to 6 AWG by volume (314.16), the smallest standard
 * metal box that has it; with 4 AWG or larger, and in the ground (314.30(A)), by the raceways (314.28), those that turn on
 * one wall as one row.
 */
function boxFor({ tables, rules }: Design, loads: readonly OpeningLoad[]): PlannedBox {
  const [first] = loads;
  if (first === undefined) throw new RangeError('a box has something in it');
  const conductors = together(loads, ({ conductors: own }) => own);
  const groundings = together(loads, ({ groundings: own }) => own);
  const straight = together(loads, (load) => load.straight);
  const turning = together(loads, (load) => load.turning);
  const { id, kind, at, under } = first;
  const location = under === null ? rules.boxLocation : 'wet';
  const conduits = together(loads, (load) => load.conduits);
  const raceways = together(loads, (load) => load.raceways);
  const isSmall = ({ size }: Counted): boolean => isBoxConductor(tables, size);
  if (under === null && conductors.every(isSmall) && groundings.every(isSmall)) {
    const { volume } = boxVolume(tables, { conductors: counted(conductors), groundings: counted(groundings) });
    return {
      id,
      kind,
      at,
      conduits,
      raceways,
      under,
      location,
      volume,
      box: squareBox(tables, volume, straight, turning),
      length: null,
    };
  }
  const { length } = pullBox(tables, { straight, rows: [turning] });
  return { id, kind, at, conduits, raceways, under, location, volume: null, box: null, length };
}

/** What all loads bring of one thing; of a single load, as most boxes have, its own list and no copy. */
const together = <Item>(loads: readonly OpeningLoad[], of: (load: OpeningLoad) => readonly Item[]): readonly Item[] =>
  loads.length === 1 ? of(loads[0]!) : loads.flatMap(of);

/** Largest trade size that the knockouts of a square box take. Common practice, no source. */
const KNOCKOUTS: ReadonlyMap<string, number> = new Map([
  ['4 x 1-1/4 square', 0.5],
  ['4 x 1-1/2 square', 0.75],
  ['4 x 2-1/8 square', 1],
  ['4-11/16 x 1-1/4 square', 0.5],
  ['4-11/16 x 1-1/2 square', 0.75],
  ['4-11/16 x 2-1/8 square', 1.25],
]);

/** The smallest square box with a volume and with knockouts for its raceways; null where none has. */
function squareBox(
  tables: CodeTables,
  volume: number,
  straight: readonly string[],
  turning: readonly string[],
): string | null {
  let inches = 0;
  for (const size of straight) inches = Math.max(inches, tradeSizeInches(size));
  for (const size of turning) inches = Math.max(inches, tradeSizeInches(size));
  let least: CodeTables['metalBoxes']['rows'][number] | null = null;
  for (const row of tables.metalBoxes.rows) {
    const largest = KNOCKOUTS.get(row.box);
    if (largest === undefined || inches > largest || volume > row.volume * (1 + 1e-9)) continue;
    if (least === null || row.volume < least.volume) least = row;
  }
  return least?.box ?? null;
}

/** One entry for each size. */
function counted(parts: readonly Counted[]): readonly Counted[] {
  const bySize = new Map<string, number>();
  for (const { size, count } of parts) bySize.set(size, (bySize.get(size) ?? 0) + count);
  return [...bySize].map(([size, count]) => ({ size, count }));
}

const boxOfOne = kept((load: OpeningLoad, design: Design): PlannedBox => boxFor(design, [load]));

const boxOfAll = kept(
  (_first: OpeningLoad, loads: readonly OpeningLoad[], design: Design): PlannedBox => boxFor(design, loads),
);

const byPlace = (loads: readonly OpeningLoad[]): readonly (readonly OpeningLoad[])[] => {
  const places = new Map<string, OpeningLoad[]>();
  for (const load of loads) {
    addTo(places, load.id, load);
  }
  return [...places.values()];
};

/** One box for each place: the circuits of a drop may come to it by several home runs. */
export const ownBoxes = (loads: readonly OpeningLoad[], design: Design): readonly PlannedBox[] =>
  byPlace(loads).map((own) => (own.length === 1 ? boxOfOne(own[0]!, design) : boxOfAll(own[0]!, own, design)));

/** How many boxes home runs have of their own: those at the drops, but for the given ones, and the junctions. */
export function countBoxes(homeRuns: readonly NamedHomeRun[], otherDrops: ReadonlySet<string>): number {
  const drops = new Set<string>();
  let junctions = 0;
  for (const { homeRun } of homeRuns)
    for (const { end } of homeRun.pieces) {
      if (end.kind === 'junction') junctions++;
      if (end.kind === 'drop' && !otherDrops.has(end.id)) drops.add(end.id);
    }
  return drops.size + junctions;
}

/** Boxes that circuits of several pieces of equipment may come to: at pull points, at drops fed by more than one. */
export const sharedBoxes = (branches: readonly EquipmentBranches[], design: Design): readonly PlannedBox[] =>
  ownBoxes(
    branches.flatMap((one) => one.shared),
    design,
  );

export const NO_BOXES: readonly PlannedBox[] = [];

/** The boxes in the ground; one list that is empty where there is none, so that nothing downstream sees a change. */
export function buriedOf(boxes: readonly PlannedBox[]): readonly PlannedBox[] {
  const buried = boxes.filter(({ under }) => under !== null);
  return buried.length === 0 ? NO_BOXES : buried;
}

/** All boxes of a site in the ground, `others` those that no branch comes to; the same list as long as they are the same. */
export function allBuried(
  site: Site,
  branches: readonly EquipmentBranches[],
  shared: readonly PlannedBox[],
  others: readonly PlannedBox[],
): readonly PlannedBox[] {
  const all = [...branches.map(({ buried }) => buried), buriedOf(shared), buriedOf(others)].filter(
    ({ length }) => length > 0,
  );
  return all.length === 0 ? NO_BOXES : steadyBuried(site.chargers, all.flat());
}

const steadyBuried = steadyList<PlannedBox>();

const allBoxes = concatenating<PlannedBox>();

/** All boxes of a site by equipment, the shared ones after them, those that no branch comes to last. */
export const boxesOf = (
  branches: readonly EquipmentBranches[],
  shared: readonly PlannedBox[],
  others: readonly PlannedBox[],
): readonly PlannedBox[] => allBoxes([...branches.map(({ boxes }) => boxes), shared, others]);
