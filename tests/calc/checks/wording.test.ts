import { describe, expect, test } from 'vitest';
import { changedRules } from '../../../calc/checks/changed-rules.ts';
import { RULES } from '../../../calc/checks/rules.ts';
import { MARGIN_KINDS } from '../../../calc/plan/margins.ts';
import { plan } from '../../../calc/plan/plan.ts';
import type { Plan } from '../../../calc/plan/plan-shape.ts';
import { DEFAULT_TABLES } from '../../../calc/tables/editions.ts';
import { ruleNotesOf } from '../../../calc/tables/rule-notes-of.ts';
import { whyCircuit, whyConduit } from '../../../calc/why/why.ts';
import { whyMargin } from '../../../calc/why/why-margins.ts';
import { whyBox, whyEquipment, whyFeeder } from '../../../calc/why/why-supply.ts';
import { DEFAULT_RULES } from '../../../routing/site/rules/rules.ts';
import { siteJsonSchema } from '../../../routing/site/schema/json-schema.ts';
import type { Rules, Site } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { fleetYard } from '../../bench/samples/fleet-yard.ts';
import { hospitalLot } from '../../bench/samples/hospital-lot.ts';
import { libraryLot } from '../../bench/samples/library-lot.ts';
import { libraryPedestals } from '../../bench/samples/library-pedestals.ts';
import { FAULTS } from './faults/index.ts';

/** Names of the file's fields that no sentence holds by chance: those with a capital inside, and some short ones. */
function fieldNames(): ReadonlySet<string> {
  const names = new Set(['kva', 'xr', 'va']);
  const visit = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return;
    for (const [key, inner] of Object.entries(value)) {
      if (key === 'properties')
        for (const name of Object.keys(inner as object)) if (/[a-z][A-Z]/.test(name)) names.add(name);
      visit(inner);
    }
  };
  visit(siteJsonSchema());
  return names;
}

const FIELDS = fieldNames();

/** Words of a sentence that are names of the file, or that no trade speaks. */
function strange(text: string): readonly string[] {
  const names = text.match(/[A-Za-z]+/g)?.filter((word) => FIELDS.has(word)) ?? [];
  const others = text.match(/\b(site file|the file|members?|hobby|percent)\b|did not expect/gi) ?? [];
  return [...names, ...others];
}

const expectPlain = (texts: Iterable<string>): void => {
  const told = [...texts].filter((text) => strange(text).length > 0);
  expect([...new Set(told)]).toEqual([]);
};

/** A tap is what 240.21 says it is: conductors ahead of their protection. The straight end of a run is a stub. */
const RUNS: ReadonlySet<string> = new Set(['no-run', 'no-feeder-route', 'keepout-crossed']);

test('the end of a run is no tap', () => {
  for (const file of Object.values(FAULTS))
    for (const { rule, says } of plan(toSite(file)).findings) if (RUNS.has(rule)) expect(says).not.toMatch(/\btap/i);
});

function* saidOf({ findings, checks, notChecked, withheld }: Plan): Generator<string> {
  for (const { says, source } of findings) {
    yield says;
    yield source;
  }
  for (const { title, source } of checks) {
    yield title;
    yield source;
  }
  yield* notChecked;
  yield* withheld;
}

test('the names of the file are known', () => {
  for (const name of ['clearHeight', 'tapLimit', 'ambientC', 'cordSlack', 'managedAmps'])
    expect(FIELDS.has(name)).toBe(true);
  expect(strange('site rule clearHeight.walk of the site file, 5 percent')).toEqual([
    'clearHeight',
    'site file',
    'percent',
  ]);
});

describe('sentences hold no name of the file and no word that the trade does not speak', () => {
  test.each(Object.entries(FAULTS))('of the fault %s', (_, file) => expectPlain(saidOf(plan(toSite(file)))));

  test.each([
    ['library', libraryLot()],
    ['pedestals', libraryPedestals()],
    ['yard', fleetYard()],
    ['hospital', hospitalLot()],
  ] as const)('of the sample %s', (_, file) => {
    const site = toSite(file);
    const planned = plan(site);
    expectPlain(saidOf(planned));
    expectPlain(stepsOf(site, planned));
  });

  test('of rules', () => {
    for (const { name, meaning, source, basis, confirm = '' } of ruleNotesOf(DEFAULT_TABLES))
      expectPlain([name, meaning, source.replace('in hobby and bus-design notes', ''), basis, confirm]);
    for (const { title } of Object.values(RULES)) expectPlain([title]);
    expectPlain(changedRules(moved(DEFAULT_RULES), 'ft').map(({ says }) => says));
  });
});

/** The rules with every number another. */
const moved = (rules: Rules): Rules =>
  JSON.parse(JSON.stringify(rules), (_, value) => (typeof value === 'number' ? value + 1 : value)) as Rules;

/** What the working of a plan's figures says: of the first circuits of each panel, their conduits, and all of the supply. */
function* stepsOf(site: Site, planned: Plan): Generator<string> {
  const some = planned.circuits.filter((_, i) => i % 40 === 0);
  const steps = [
    ...some.flatMap(({ charger, conduits }) => [
      ...whyCircuit(site, charger),
      ...whyBox(site, charger),
      ...conduits.flatMap((id) => whyConduit(site, id)),
      ...MARGIN_KINDS.flatMap((kind) => whyMargin(site, planned, charger, kind)),
    ]),
    ...site.equipment.flatMap(({ id }) => whyEquipment(site, id)),
    ...site.feeders.flatMap(({ id }) => whyFeeder(site, id)),
  ];
  for (const { find, formula, values, source } of steps) {
    yield find;
    yield formula;
    yield* Object.keys(values);
    yield source;
  }
}
