import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { runWords } from '../../../calc/cli/words.ts';
import { HOSPITAL, LIBRARY, machineWith, SAMPLES } from './words-parts.ts';

describe('plan', () => {
  test('prints a summary with runs, takeoff and the cautions', async () => {
    const { status, out, err } = await runWords(['plan', LIBRARY], machineWith());
    expect([status, err]).toEqual([0, '']);
    for (const words of ['16 stalls', 'EV16', '99\' 0"', 'junction box', 'authority having jurisdiction'])
      expect(out).toContain(words);
  });
  test('--json prints one line a file, in their order', async () => {
    const { out } = await runWords(['plan', '--json', HOSPITAL, LIBRARY], machineWith());
    const plans = out
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(plans.map(({ format, version, site, runs }) => [format, version, site, runs.length])).toEqual([
      ['overrow/plan', 1, 'Mill Creek Hospital lot', 240],
      ['overrow/plan', 1, 'Alder Street Library lot', 16],
    ]);
  });
  test('--out writes every sheet there, and nothing elsewhere', async () => {
    const machine = machineWith();
    const { status, out } = await runWords(['plan', LIBRARY, '--out', 'sheets'], machine);
    expect(status).toBe(0);
    expect([...machine.written.keys()].toSorted()).toEqual(out.trimEnd().split('\n').toSorted());
    for (const ending of [
      '.drawings.pdf',
      '.drawings-tabloid.pdf',
      '.calculations.pdf',
      '.utility-letter.pdf',
      '.xlsx',
      '.runs.csv',
      '.dxf',
      '.svg',
      '.geojson',
      '.ifc',
      '.plan.json',
    ])
      expect(machine.written.has(join('sheets', `library-lot${ending}`))).toBe(true);
  });
  test('--out refuses two files of one name', async () => {
    const machine = machineWith({ 'a/x.site.json': readFileSync(join(SAMPLES, 'library-lot.site.json'), 'utf8') });
    const { status, out } = await runWords(['plan', 'a/x.site.json', 'a/x.site.json', '--out', 'sheets'], machine);
    expect([status, out, machine.written.size]).toEqual([2, '', 0]);
  });
});

describe('check', () => {
  test('says how the site stands, which checks were made on how much, and what nobody looked at', async () => {
    const { out } = await runWords(['check', LIBRARY], machineWith());
    expect(out).toMatch(/0 fail, \d+ to check, \d+ notes?; sound\n/);
    expect(out).toMatch(/\d+ checks on [\d,]+ things\n/);
    expect(out).toMatch(/none +16 {2}Cords short of an inlet/);
    expect(out).toContain('Not looked at: the capacity of the structure');
    expect(out).toContain('Nothing drawn for:');
    const summary = (await runWords(['plan', LIBRARY], machineWith())).out;
    expect(summary).toContain(/\d+ checks on [\d,]+ things/.exec(out)![0]);
  });
  test('--json gives findings and checks, a line a file, with the same status', async () => {
    const { status, out } = await runWords(['check', '--json', LIBRARY, HOSPITAL], machineWith());
    expect(status).toBe(1);
    const [library, hospital] = out
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(library).toMatchObject({ file: LIBRARY, code: 'NEC 2023', withheld: [] });
    for (const check of library.checks)
      expect(Object.keys(check).sort()).toEqual(['fail', 'lookedAt', 'note', 'rule', 'source', 'title', 'warn']);
    expect(library.notChecked.length).toBeGreaterThan(0);
    const fails = hospital.findings.filter(({ severity }: { severity: string }) => severity === 'fail').length;
    expect(hospital.checks.reduce((sum: number, { fail }: { fail: number }) => sum + fail, 0)).toBe(fails);
  });
  test('is 0 for a sound lot and 1 for one with faults', async () => {
    expect((await runWords(['check', LIBRARY], machineWith())).status).toBe(0);
    const { status, out } = await runWords(['check', LIBRARY, HOSPITAL], machineWith());
    expect(status).toBe(1);
    for (const rule of [
      'reach',
      'no-run',
      'branch-limit',
      'boxes-coincide',
      'cord-limit',
      'bends',
      'over-vehicle',
      'cords-per-drop',
      'keepout-crossed',
      'working-space',
    ])
      expect(out).toContain(`[${rule};`);
  });
});

describe('the words', () => {
  test('an unknown option is one line that says where help is', async () => {
    for (const words of [['plan', '--jsn', LIBRARY], ['check', '--cords', LIBRARY], ['plan', '--out'], ['paln']]) {
      const { status, out, err } = await runWords(words, machineWith());
      expect([status, out, err.trimEnd().split('\n').length]).toEqual([2, '', 1]);
    }
    expect((await runWords(['plan', '--jsn', LIBRARY], machineWith())).err).toBe(
      'plan: there is no option --jsn; did you mean "--json"? see overrow plan --help\n',
    );
  });

  test('each verb has its own help, and the version is told', async () => {
    const { status, out } = await runWords(['propose', '--help'], machineWith());
    expect(status).toBe(0);
    expect(out).toContain('--replace');
    expect(out).not.toContain('calc KIND');
    expect((await runWords(['help', 'calc'], machineWith())).out).toContain('--keep-going');
    expect((await runWords(['--help'], machineWith())).out).toContain('compare FILE FILE...');
    expect((await runWords(['--version'], machineWith())).out).toMatch(/^overrow \d+\.\d+\.\d+\n$/);
  });

  test('a folder that cannot be made is refused before any sheet is worked', async () => {
    const said: string[] = [];
    const machine = { ...machineWith(), progress: (line: string) => void said.push(line) };
    const { status, out, err } = await runWords(['plan', LIBRARY, '--out', '/proc/x'], machine);
    expect([status, out, err, said]).toEqual([2, '', 'plan --out: no folder /proc/x can be made there\n', []]);
  });

  test('plan ends with how many fail, and writes only the sheets that are asked for', async () => {
    const { out } = await runWords(['plan', HOSPITAL], machineWith());
    expect(out.trimEnd().split('\n').at(-1)).toMatch(/^Mill Creek Hospital lot: \d+ fail, \d+ to check, \d+ notes?$/);
    const said: string[] = [];
    const machine = { ...machineWith(), progress: (line: string) => void said.push(line) };
    const written = await runWords(['plan', LIBRARY, '--out', 's', '--only', 'svg, runs.csv'], machine);
    expect(written.out).toBe('s/library-lot.svg\ns/library-lot.runs.csv\n');
    expect(said).toEqual(['library-lot: Plan drawing, as SVG (1 of 2)', 'library-lot: Runs, as CSV (2 of 2)', '']);
    const none = await runWords(['plan', LIBRARY, '--out', 's', '--only', 'png'], machineWith());
    expect([none.status, none.err]).toEqual([2, expect.stringContaining('no sheet ends in "png"')]);
  });
});

test('schema prints a JSON Schema', async () => {
  const { out } = await runWords(['schema'], machineWith());
  expect(JSON.parse(out).properties.format.const).toBe('overrow/site');
});
