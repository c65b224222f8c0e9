import { describe, expect, test } from 'vitest';
import { runWords } from '../../../calc/cli/words.ts';
import { HOSPITAL, LIBRARY, machineWith } from './words-parts.ts';

describe('propose', () => {
  const run = (words: readonly string[], machine = machineWith()) => runWords(['propose', ...words], machine);

  test('writes the site with the proposal to the file that it is told, and says how near the best it is', async () => {
    const machine = machineWith();
    const { status, out, err } = await run(
      ['samples/library-lot.site.json', '--what', 'equipment', '--out', 'next.site.json'],
      machine,
    );
    expect([status, err, [...machine.written.keys()]]).toEqual([0, '', ['next.site.json']]);
    for (const words of [
      'written to next.site.json',
      'P1 stays where it stands',
      'Findings before: 0 fail',
      'The lot comes to $',
      'with it, as before.',
      'Charging day workplace: ',
      'authority having jurisdiction',
    ])
      expect(out).toContain(words);
    expect(JSON.parse(machine.written.get('next.site.json') as string)).toEqual(JSON.parse(machine.read(LIBRARY)));
  });

  test('--json says the same as one line, counts of findings before and after with it', async () => {
    const { equipment, stalls, name, format, version, units, aisles, columns, members } = JSON.parse(
      machineWith().read(LIBRARY),
    );
    const ground = JSON.stringify({ format, version, units, name, stalls, aisles, columns, members, equipment });
    const machine = machineWith({ 'ground.site.json': ground });
    const { status, out } = await run(
      ['ground.site.json', '--what', 'all', '--out', 'next.site.json', '--json'],
      machine,
    );
    expect(status).toBe(0);
    const said = JSON.parse(out);
    expect(said).toMatchObject({
      format: 'overrow/proposal',
      version: 1,
      what: 'all',
      findings: { after: { fail: 0 } },
    });
    expect(
      said.parts.map(({ what, measure }: { what: string; measure: object | null }) => [what, measure !== null]),
    ).toEqual([
      ['drops', true],
      ['equipment', false],
      ['raceways', true],
    ]);
    const { status: checked } = await runWords(
      ['check', 'next.site.json'],
      machineWith({ 'next.site.json': machine.written.get('next.site.json') as string }),
    );
    expect(checked).toBe(0);
  });

  test.each([
    [[], /name one site file/],
    [[LIBRARY, HOSPITAL, '--what', 'all', '--out', 'o'], /name one site file, not 2/],
    [[LIBRARY, '--out', 'o'], /--what: expected drops, raceways, equipment, all, mend, none was given/],
    [[LIBRARY, '--what', 'panels', '--out', 'o'], /got "panels"/],
    [[LIBRARY, '--what', 'all'], /--out: name the file/],
    [
      [LIBRARY, '--what', 'drops', '--out', 'o', '--cords', '9'],
      /--cords: expected a whole number from 1 to 6, got "9"/,
    ],
    [['nowhere.site.json', '--what', 'all', '--out', 'o'], /nowhere\.site\.json: cannot be read/],
    [[LIBRARY, '--what', 'all', '--out', 'o', '--seconds', 'soon'], /propose --seconds: expected a number over 0/],
    [[LIBRARY, '--what', 'all', '--out', 'o', '--load', 'half'], /propose --load: expected full, day/],
    [[LIBRARY, '--what', 'all', '--out', 'o', '--feeders', 'tin'], /propose --feeders: expected copper or aluminum/],
    [[LIBRARY, '--what', 'equipment', '--out', 'o', '--load', 'day'], /--what all/],
    [[LIBRARY, '--what', 'all', '--out', 'o', '--changes'], /propose takes no --changes/],
    [[LIBRARY, '--what', 'all', '--out', 'held.site.json'], /held\.site\.json stands there already; --replace/],
  ] as const)('%j is refused with the reason, and nothing is written', async (words, reason) => {
    const machine = machineWith({ 'held.site.json': '{}' });
    const { status, out, err } = await run(words, machine);
    expect([status, out, machine.written.size]).toEqual([2, '', 0]);
    expect(err).toMatch(reason);
  });
});
