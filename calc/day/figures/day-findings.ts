import type { Finding } from '../../../routing/site/rules/finding.ts';
import type { ChargingDay } from '../../../routing/site/site.ts';
import { counted } from '../../../routing/words/counted.ts';
import { clockOf } from '../clock.ts';
import type { DayInput } from '../day-input.ts';
import { relaxedOf } from '../optimum/relaxed.ts';
import type { Strategy } from '../rules/rules.ts';
import type { ByRules } from '../simulated/by-rules.ts';
import { type Outcome, SHORT } from '../simulated/outcome.ts';
import { simulate } from '../simulated/simulate.ts';
import { type World, worldOf } from '../simulated/world.ts';
import { lackWords } from './day-words.ts';

const SOURCE = 'the day as entered; planning figures, common practice';
/** Past a limit by less than this, amperes, is rounding. */
const OVER = 1e-6;
/** A line that never passes this part of its room beside a full one could bear more. */
const IDLE = 0.6;

const NAMES: Readonly<Record<Strategy, string>> = {
  unmanaged: 'Without management',
  equal: 'With equal shares',
  first: 'With first come, first charged',
  deadline: 'With who leaves first charging first',
  laxity: 'With who has least time to spare charging first',
};

/** What there is to say of a day under the rule that its lot is run by. */
export function dayFindings(
  day: ChargingDay,
  input: DayInput,
  strategy: Strategy,
  { cars, strategies }: ByRules,
  notRead: readonly string[],
): readonly Finding[] {
  const world = worldOf(input);
  const outcome = strategies[strategy];
  const what = day.name ?? day.id;
  const found = (severity: Finding['severity'], about: readonly string[], says: string): Finding => ({
    severity,
    rule: 'charging-day',
    about,
    says: `${what}: ${says}`,
    source: SOURCE,
  });
  const findings: Finding[] = [];
  if (strategy === 'unmanaged') for (const says of passedLimits(world)) findings.push(found('fail', [], says));
  const away = cars.filter(({ charger }, i) => charger === null && hasSteps(world, i)).length;
  if (away > 0) findings.push(found('warn', [], `${counted(away, 'car')} of ${cars.length} find no free stall.`));
  const short = shortCars(world, outcome);
  if (short !== null) findings.push(found('warn', short.about, `${NAMES[strategy]} ${short.says}`));
  const long = cars.filter(({ need, most, charger }) => charger !== null && need - most > SHORT).length;
  if (long > 0)
    findings.push(
      found(
        'note',
        [],
        `${counted(long, 'car')} ${long === 1 ? 'asks' : 'ask'} more than a cord gives in the stay, whatever the limits.`,
      ),
    );
  for (const says of idleLines(world, outcome)) findings.push(found('note', [], says));
  const relaxed = relaxedOf(world);
  if (relaxed.length > 0)
    findings.push(
      found(
        'note',
        [],
        `the best schedule would leave out ${relaxed.map((word) => RELAXED[word]).join(', ')}: it is a bound.`,
      ),
    );
  if (notRead.length > 0) findings.push(found('note', [], `limits that were not read: ${notRead.join('; ')}.`));
  return findings;
}

const RELAXED = {
  minimum: 'the least current of a charger',
  cords: 'that a cord serves one car at a time within a step',
  taper: 'that a filling battery takes less',
} as const;

const hasSteps = ({ stays }: World, car: number): boolean => stays[car]!.first < stays[car]!.end;

/** Each limit that unmanaged charging passes: when most, and by how much. */
function passedLimits(world: World): string[] {
  const { rows } = simulate(world, 'unmanaged');
  const { limits } = world.input;
  return limits.flatMap((limit, l) => {
    let worst = { over: OVER, says: '' };
    world.rows.forEach((row, r) => {
      if (row.limit !== l) return;
      rows[r]!.forEach((amps, step) => {
        const over = amps - row.room[step]!;
        if (over <= worst.over) return;
        const unit = limit.kind === 'kw' ? 'kW' : 'A';
        const line = row.name === 'all' ? '' : ` on line ${row.name}`;
        const at = clockOf(world.window.from + step * world.window.step);
        worst = {
          over,
          says: `without management ${limit.id} is passed${line} at ${at}: ${amps.toFixed(1)} ${unit} where ${row.room[step]!.toFixed(1)} are left for charging.`,
        };
      });
    });
    return worst.says === '' ? [] : [worst.says];
  });
}

/** Cars that leave with less than the cord could have given in the stay. */
function shortCars(world: World, { got }: Outcome): { about: readonly string[]; says: string } | null {
  const { got: most } = simulate(world, 'unmanaged');
  let [many, worst, at] = [0, SHORT, -1];
  const about = new Set<string>();
  most.forEach((could, car) => {
    const lacks = could - got[car]!;
    if (lacks <= SHORT) return;
    many++;
    const charger = world.input.chargers[world.charger[car]!]!.id;
    about.add(charger);
    if (lacks > worst) [worst, at] = [lacks, car];
  });
  if (many === 0) return null;
  const where = world.input.chargers[world.charger[at]!]!.id;
  return {
    about: [...about].slice(0, 50),
    says: `${many} of ${counted(most.length, 'car')} leave with less than the cord could have given, worst at ${where} by ${lackWords(worst)}.`,
  };
}

/** Limits of which one line comes to its room while another has plenty all day. */
function idleLines(world: World, { peak }: Outcome): string[] {
  return world.input.limits.flatMap((limit, l) => {
    const rows = world.rows.filter((row) => row.limit === l);
    if (rows.length !== 3) return [];
    const used = rows.map(({ name, room }) => ({
      name,
      part:
        peak[limit.id]![name]! /
        Math.max(
          1e-9,
          room.reduce((a, b) => Math.max(a, b), 0),
        ),
    }));
    const full = used.find(({ part }) => part > 1 - 1e-6);
    const idle = used.find(({ part }) => part < IDLE);
    if (full === undefined || idle === undefined) return [];
    return [
      `line ${full.name} of ${limit.id} is full while line ${idle.name} never passes ${Math.round(100 * idle.part)}% of its room; other pairs may serve more.`,
    ];
  });
}
