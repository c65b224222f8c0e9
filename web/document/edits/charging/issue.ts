import type { PanelCircuit, PanelSchedule } from '../../../../calc/supply/panels/panel-schedule.ts';
import { linesOfSpaces } from '../../../../calc/supply/tree/issued-lines.ts';
import type { Lines } from '../../../../routing/site/schema/vocabulary.ts';
import type { IssuedCircuit, SiteFile } from '../../../../routing/site/site.ts';
import type { Edit, EditStep } from '../../change/edit.ts';
import { type ElementOf, elementsOf } from '../../change/element-lists.ts';
import { setStep } from '../../change/set-field.ts';
import { alike, changeStep, held } from '../gather.ts';
import { inWords } from '../in-words.ts';

type Circuits = Readonly<Record<string, IssuedCircuit>>;

/**
 * Feeds chargers from a piece of equipment, on the lines that are given or, without, on those that balance it. What was
 * issued of them elsewhere is let go; with lines they are issued on these, so that later plans keep them there.
 */
export function feedChargers(file: SiteFile, ids: readonly string[], panel: string, lines?: Lines): Edit {
  const refs = ids.map((id) => ({ list: 'chargers', id }) as const);
  const chargers = held(file, refs);
  const own = new Set(chargers.map(({ element }) => element.id));
  const moves = chargers.flatMap(({ list, element }) =>
    changeStep(list, element, { ...(element as ElementOf<'chargers'>), from: panel }),
  );
  const was = file.issued?.circuits ?? {};
  const fed = new Map(elementsOf(file, 'chargers').map(({ id, from }) => [id, from]));
  const isLost = (id: string): boolean => own.has(id) && (lines !== undefined || fed.get(id) !== panel);
  const kept = Object.entries(was).filter(([id]) => !isLost(id));
  const issued = lines === undefined ? [] : [...own].map((id) => [id, { panel, phases: lines }] as const);
  const steps = [...moves, ...issueSteps(file, Object.fromEntries([...kept, ...issued]))];
  const where = lines === undefined ? panel : `${lines} of ${panel}`;
  return { name: `Feed ${inWords(refs)} from ${where}`, steps };
}

/** Spaces of a breaker whose first pole is in one of them; null where the panel has not as many, or lines for them. */
export function spacesFrom(
  { rows, spaces = Infinity }: PanelSchedule,
  first: number,
  poles: number,
): readonly number[] | null {
  const own = Array.from({ length: poles }, (_, pole) => first + 2 * pole);
  return first >= 1 && own.at(-1)! <= spaces && linesOfSpaces(own, rows) !== null ? own : null;
}

/**
 * Moves a breaker of a panel so that its first pole is in a space, and issues it there. One of as many poles that stands
 * there changes places with it; any other makes room, and is issued nowhere until it is moved again. No steps where the
 * panel has no such spaces.
 */
export function moveCircuit(file: SiteFile, schedule: PanelSchedule, id: string, first: number): Edit {
  const circuit = schedule.circuits.find((one) => one.id === id);
  const spaces = circuit ? spacesFrom(schedule, first, circuit.lines.length) : null;
  const name = `Move ${id} to space ${first} of ${schedule.equipment}`;
  if (!circuit || spaces === null || spaces.join() === circuit.spaces.join()) return { name, steps: [] };
  const circuits: Record<string, IssuedCircuit> = { ...file.issued?.circuits };
  const inTheWay = schedule.circuits.filter(
    (one) => one !== circuit && one.spaces.some((space) => spaces.includes(space)),
  );
  for (const other of inTheWay) delete circuits[other.id];
  const [other] = inTheWay;
  const swaps =
    other !== undefined &&
    other.spaces.join() === spaces.join() &&
    circuit.spaces.length === spaces.length &&
    !circuit.spaces.some((space) => spaces.includes(space));
  if (swaps) circuits[other.id] = issuedAt(schedule, circuit.spaces);
  circuits[id] = issuedAt(schedule, spaces);
  return { name, steps: issueSteps(file, circuits) };
}

function issuedAt({ equipment, rows }: PanelSchedule, spaces: readonly number[]): IssuedCircuit {
  return { panel: equipment, spaces: [...spaces], phases: linesOfSpaces(spaces, rows)! };
}

/** Issues every breaker of a panel where it stands. */
export function issuePanel(file: SiteFile, schedule: PanelSchedule): Edit {
  const placed = schedule.circuits.filter(({ spaces }) => spaces.length > 0);
  const own = placed.map((circuit: PanelCircuit) => [circuit.id, issuedAt(schedule, circuit.spaces)] as const);
  const circuits = { ...file.issued?.circuits, ...Object.fromEntries(own) };
  return { name: `Issue the schedule of ${schedule.equipment}`, steps: issueSteps(file, circuits) };
}

/** Lets go of what was issued in a panel, its spares too: the plan lays it out as it sees fit. */
export function letGoOfPanel(file: SiteFile, panel: string): Edit {
  const kept = Object.entries(file.issued?.circuits ?? {}).filter(([, issued]) => issued.panel !== panel);
  return { name: `Lay out ${panel} anew`, steps: issueSteps(file, Object.fromEntries(kept)) };
}

/** The step to other issued circuits; none where they are the same. */
function issueSteps(file: SiteFile, circuits: Circuits): readonly EditStep[] {
  const was = file.issued?.circuits ?? {};
  if (alike(was, circuits)) return [];
  const { circuits: _, ...others } = file.issued ?? {};
  const isEmpty = Object.keys(circuits).length === 0;
  const after = isEmpty ? others : { ...others, circuits };
  return [setStep(file, 'issued', Object.keys(after).length === 0 ? undefined : after)];
}
