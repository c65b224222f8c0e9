import type { Charger, Site } from '../../../routing/site/site.ts';
import { cordsOf } from '../../plan/margins.ts';
import type { UncountedPlan } from '../../plan/plan-shape.ts';
import type { Circuit } from '../../plan-file/branches.ts';
import { panelSchedules } from '../../supply/panels/panel-schedule.ts';
import { type AskedLine, checked } from './asked.ts';
import { sizeName } from './size-name.ts';

/** What is looked at of each charger: its breaker, its conductors, what its cord reaches, and the steps of its work. */
export function circuitLines(site: Site, plan: UncountedPlan): readonly AskedLine[] {
  const circuits = new Map(plan.circuits.map((circuit) => [circuit.charger, circuit]));
  const spaces = new Map(
    [...panelSchedules(site).values()].flatMap((schedule) =>
      schedule.circuits.map((circuit) => [circuit.id, `${schedule.equipment}-${circuit.spaces.join('/')}`] as const),
    ),
  );
  const runs = new Map(plan.runs.map((run) => [run.charger, run]));
  return site.chargers.flatMap((charger) => {
    const run = runs.get(charger.id);
    return [
      ...branchLines(charger, circuits.get(charger.id), spaces.get(charger.id), run?.conductorLength ?? null, site),
      ...reachLines(site, plan, charger),
      ...stepLines(charger),
    ];
  });
}

const own = ({ id }: Charger) => ({ of: id, list: 'chargers' }) as const;

function branchLines(
  charger: Charger,
  circuit: Circuit | undefined,
  spaces: string | undefined,
  length: number | null,
  { rules }: Site,
): readonly AskedLine[] {
  if (!circuit) return [];
  const { breakerAmps, conductor, grounding, phases, pilot } = circuit;
  const where = spaces ?? charger.from;
  return [
    {
      ...own(charger),
      what: `Breaker, ${phases.length} poles`,
      where,
      rule: 'circuit-size',
      expected: { kind: 'number', least: breakerAmps, most: breakerAmps, unit: 'A' },
      mark: checked('breaker'),
    },
    {
      ...own(charger),
      what: 'Conductors',
      where: `${where} to ${charger.drop}`,
      rule: 'circuit-size',
      expected: {
        kind: 'seen',
        words: `${phases.length} ${sizeName(conductor.size)} ${conductor.metal} ${conductor.insulation}, ground ${sizeName(grounding.size)}${pilot ? ', pilot' : ''}`,
      },
      mark: checked('conductors'),
    },
    ...(length === null
      ? []
      : [
          {
            ...own(charger),
            what: 'Length of its conductors',
            where: `${where} to ${charger.drop}`,
            rule: 'branch-limit',
            expected: { kind: 'length', most: charger.branchLimit ?? rules.branchLimit, drawn: length },
            mark: checked('branch length'),
          } as const,
        ]),
  ];
}

/** Cord that is left at the farthest inlet of the car in each stall that it serves. */
const reachLines = (site: Site, plan: UncountedPlan, charger: Charger): readonly AskedLine[] =>
  cordsOf(plan, site, charger.id).map(({ stall, worst: { margin, inlet, direction } }) => ({
    ...own(charger),
    what: `Cord to spare at the ${inlet} inlet, ${direction}`,
    where: `${charger.drop} to stall ${site.stalls.find(({ id }) => id === stall)?.label ?? stall}`,
    rule: 'reach',
    expected: { kind: 'length', least: 0, ...(margin !== null && { drawn: margin }) },
    mark: checked(`spare ${stall}`.slice(0, 64)),
  }));

const STEP_WORDS = { set: 'Set', pulled: 'Pulled', terminated: 'Terminated', tested: 'Tested' } as const;

/** The steps of the work at a charger, a feeder or equipment. */
export const stepsOf = (
  of: Pick<AskedLine, 'of' | 'list' | 'where'>,
  steps: readonly (keyof typeof STEP_WORDS)[],
): readonly AskedLine[] =>
  steps.map((step) => ({
    ...of,
    what: STEP_WORDS[step],
    rule: null,
    expected: { kind: 'step' },
    mark: { what: step },
  }));

const stepLines = (charger: Charger): readonly AskedLine[] =>
  stepsOf({ ...own(charger), where: charger.drop }, ['pulled', 'terminated', 'tested']);
