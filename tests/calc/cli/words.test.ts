import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import DxfParser, { type ITextEntity } from 'dxf-parser';
import { describe, expect, test } from 'vitest';
import { packedFonts } from '../../../calc/cli/fonts.ts';
import type { Machine } from '../../../calc/cli/machine.ts';
import { loadSolver } from '../../../calc/cli/solver.ts';
import { runWords } from '../../../calc/cli/words.ts';
import { issueNames } from '../../../calc/plan/issue-names.ts';
import { plan } from '../../../calc/plan/plan.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { linesOn, readPdf } from '../../outside/sheets/read-pdf.ts';

const SAMPLES = join(import.meta.dirname, '../../../samples');

/** A machine with these files and this standard input, and the samples; what is written is kept. */
function machineWith(
  files: Readonly<Record<string, string>> = {},
  input = '',
): Machine & { readonly written: Map<string, string | Uint8Array> } {
  const written = new Map<string, string | Uint8Array>();
  return {
    written,
    read: (path) => {
      const held = files[path];
      if (held !== undefined) return held;
      if (path.startsWith('samples/')) return readFileSync(join(SAMPLES, path.slice(8)), 'utf8');
      throw new Error('no such file');
    },
    write: (path, content) => {
      written.set(path, content);
    },
    bytes: () => new Uint8Array(),
    makeFolder: (path) => {
      if (path.startsWith('/proc/')) throw new Error(`no folder ${path} can be made there`);
    },
    isTaken: (path) => written.has(path) || files[path] !== undefined,
    progress: () => {},
    today: () => '2026-11-25',
    fonts: packedFonts,
    solver: loadSolver,
    remove: () => {},
    mayGoOn: () => () => true,
    input: () => input,
  };
}

const LIBRARY = 'samples/library-lot.site.json';
const HOSPITAL = 'samples/hospital-lot.site.json';

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

describe('wrong input and wrong words', () => {
  test.each([
    [[], /name a verb/],
    [['plot'], /no verb "plot"/],
    [['plan'], /name one site file/],
    [['plan', '--fast', LIBRARY], /fast/],
    [['check', '--out', 'x', LIBRARY], /check takes no --out/],
    [['compare', LIBRARY], /two to 6/],
    [['compare', LIBRARY, LIBRARY, '--day', 'gone'], /no file has a day "gone"; there are workplace/],
    [['compare', '--changes', LIBRARY, LIBRARY, LIBRARY], /two versions/],
    [['plan', 'nowhere.site.json'], /nowhere\.site\.json: cannot be read/],
    [['plan', 'broken.site.json'], /broken\.site\.json: drops\[0\]\.cord/],
    [['plan', '--json', LIBRARY, 'broken.site.json'], /broken\.site\.json: drops\[0\]\.cord/],
    [['chekc', LIBRARY], /did you mean "check"\?\s*$/],
    [['plan', LIBRARY, '--out', 'o', '--set', 'permitt'], /did you mean "permit"\?/],
    [['calc'], /name a kind/],
    [['calc', 'ohms'], /no kind "ohms"/],
    [['plan', LIBRARY, '--prices', 'bad.csv'], /bad\.csv: line 1/],
  ])('%j: status 2, a reason, nothing printed', async (words, says) => {
    const broken = JSON.stringify({
      format: 'overrow/site',
      version: 1,
      units: 'ft',
      name: 'x',
      drops: [{ id: 'D1', box: [0, 0, 9], cord: 'long' }],
    });
    const { status, out, err } = await runWords(
      words,
      machineWith({ 'broken.site.json': broken, 'bad.csv': 'item,price\n' }),
    );
    expect([status, out]).toEqual([2, '']);
    expect(err).toMatch(says);
  });
});

describe('calc', () => {
  // NEC Chapter 9 Table 8: 8 AWG stranded uncoated copper, 0.778 ohm per 1,000 ft: 2 x 32 A x 0.150 x 0.778 = 7.4688 V.
  const wish = {
    phases: 1,
    volts: 208,
    amps: 32,
    length: 150,
    conductor: { size: '8', metal: 'copper' },
    method: 'resistance',
    raceway: 'steel',
    powerFactor: 1,
  };
  test('answers one line for each', async () => {
    const { status, out } = await runWords(
      ['calc', 'voltage-drop'],
      machineWith({}, `${JSON.stringify(wish)}\n\n${JSON.stringify({ ...wish, length: 300 })}\n`),
    );
    const answers = out
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(status).toBe(0);
    expect(answers[0].dropVolts).toBeCloseTo(7.4688, 6);
    expect(answers[1].dropVolts).toBeCloseTo(14.9376, 6);
  });
  test('--explain prints the steps with their sources', async () => {
    const { out } = await runWords(['calc', 'voltage-drop', '--explain'], machineWith({}, JSON.stringify(wish)));
    const { steps } = JSON.parse(out);
    expect(steps.length).toBeGreaterThan(0);
    for (const step of steps) {
      expect(step.formula).not.toBe('');
      expect(step.source).not.toBe('');
    }
  });
  test('names the line and place of what is wrong, and answers nothing', async () => {
    const { status, out, err } = await runWords(
      ['calc', 'voltage-drop'],
      machineWith({}, `${JSON.stringify(wish)}\n{"phases": 2}\nnot json\n`),
    );
    expect([status, out]).toEqual([2, '']);
    expect(err).toMatch(/line 2: method: missing/);
    expect(err).toMatch(/line 3: not JSON/);
  });
});

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

describe('a file that stands there already', () => {
  test('is written over by a proposal only with --replace', async () => {
    const machine = machineWith({ 'held.site.json': '{}' });
    const words = ['propose', LIBRARY, '--what', 'equipment', '--out', 'held.site.json', '--replace'];
    expect((await runWords(words, machine)).status).toBe(0);
    expect([...machine.written.keys()]).toEqual(['held.site.json']);
  });
});

describe('one file or line of several that is wrong', () => {
  const files = { 'bad.site.json': '{"format":"overrow/site"', 'good.site.json': machineWith().read(LIBRARY) };

  test('leaves nothing on standard output, as the contract has it', async () => {
    const { status, out, err } = await runWords(['plan', '--json', 'bad.site.json', LIBRARY], machineWith(files));
    expect([status, out]).toEqual([2, '']);
    expect(err).toMatch(/^bad\.site\.json: not JSON: line 1/);
    const lines = '{"breakerAmps":40,"metal":"copper"}\n{}\n';
    expect(await runWords(['calc', 'grounding'], machineWith({}, lines))).toMatchObject({ status: 2, out: '' });
  });

  test('with --keep-going has a line of its own in its place, and the rest are done', async () => {
    const words = ['plan', '--json', '--keep-going', 'good.site.json', 'bad.site.json', LIBRARY, 'none.site.json'];
    const { status, out, err } = await runWords(words, machineWith(files));
    const lines = out
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(status).toBe(2);
    expect(lines.map(({ format, file }) => [format, file])).toEqual([
      ['overrow/plan', undefined],
      ['overrow/unread', 'bad.site.json'],
      ['overrow/plan', undefined],
      ['overrow/unread', 'none.site.json'],
    ]);
    expect(err.trimEnd().split('\n')).toHaveLength(2);
    const input =
      '{"breakerAmps":40,"metal":"copper"}\nno\n{"breakerAmps":40,"metal":"tin"}\n{"breakerAmps":20,"metal":"copper"}\n';
    const calc = await runWords(['calc', 'grounding', '--keep-going'], machineWith({}, input));
    expect(calc.status).toBe(2);
    const [first, second, third, fourth, ...more] = calc.out
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(more).toEqual([]);
    // Table 250.122: 10 AWG at 40 A, 12 AWG at 20 A.
    expect([first, fourth]).toMatchObject([{ grounding: { size: '10' } }, { grounding: { size: '12' } }]);
    expect([second.errors[0], third.errors[0]]).toEqual([
      expect.stringMatching(/^not JSON/),
      expect.stringMatching(/^metal: /),
    ]);
    expect(calc.err).toMatch(/^line 2: not JSON.*\nline 3: metal/);
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

describe('compare', () => {
  test('sets differences first, in the first file’s units', async () => {
    const { out } = await runWords(
      ['compare', LIBRARY, 'samples/library-pedestals.site.json', '--json'],
      machineWith(),
    );
    const { facts } = JSON.parse(out);
    const differs = facts.map((fact: { differs: boolean }) => fact.differs);
    expect(differs).toEqual([...differs].sort((a, b) => Number(b) - Number(a)));
    const trench = facts.find(({ fact }: { fact: string }) => fact === 'trench');
    expect(trench.values[0]).toBe(0);
    expect(trench.values[1]).toBeGreaterThan(80);
  });
  test('--changes tells what moved and what it does to the quantities', async () => {
    const lot = JSON.parse(readFileSync(join(SAMPLES, 'library-lot.site.json'), 'utf8'));
    lot.drops[2].box[1] -= 2;
    lot.drops[2].retractor[1] -= 2;
    const { out } = await runWords(
      ['compare', LIBRARY, 'later.site.json', '--changes', '--json'],
      machineWith({ 'later.site.json': JSON.stringify(lot) }),
    );
    const { changes } = JSON.parse(out);
    expect(changes.elements).toMatchObject([{ list: 'drops', id: 'D03', change: 'moved' }]);
    const black = changes.quantities.filter(({ item }: { item: string }) => item === 'conductor');
    // Two lines of one circuit, 2 ft shorter each, with 5 percent waste.
    expect(
      black.reduce((sum: number, { before, after }: { before: number; after: number }) => sum + before - after, 0),
    ).toBeCloseTo(4.2, 6);
  });
});

describe('the drawing of the changes', () => {
  test('has a cloud and a delta round each thing that moved, and round the place of what is gone', async () => {
    const lot = JSON.parse(readFileSync(join(SAMPLES, 'library-lot.site.json'), 'utf8'));
    lot.drops[2].box[1] -= 2;
    lot.drops[2].retractor[1] -= 2;
    lot.columns.pop();
    const machine = machineWith({ 'later.site.json': JSON.stringify(lot) });
    const { status } = await runWords(['compare', LIBRARY, 'later.site.json', '--changes', '--out', 'marked'], machine);
    expect(status).toBe(0);
    const svg = String(machine.written.get(join('marked', 'later.changes.svg')));
    // Two places, each a cloud and the triangle of its delta; the same in all three.
    expect(svg.match(/<polygon class="G-ANNO-REVS"/g)).toHaveLength(4);
    const drawing = new DxfParser().parseSync(String(machine.written.get(join('marked', 'later.changes.dxf'))))!;
    const inModel = drawing.entities.filter(({ layer }) => layer === 'G-ANNO-REVS-IDEN');
    expect(inModel.filter(({ type }) => type === 'LWPOLYLINE')).toHaveLength(4);
    const set = machine.written.get(join('marked', 'later.changes.pdf')) as Uint8Array;
    const { pages } = await readPdf(set);
    const page = pages.findIndex(({ label }) => label === 'E-101');
    expect(await linesOn(set, page + 1, 'G-ANNO-REVS')).toHaveLength(4);
    // Deltas of revision 1, and the lines of the change order that each cloud stands for.
    const LINES = /^lines? [\d, -]+$/;
    const told = inModel.flatMap((one) => (one.type === 'TEXT' ? [(one as ITextEntity).text] : []));
    expect(told.filter((words) => words === '1')).toHaveLength(2);
    const lines = told.filter((words) => LINES.test(words)).sort();
    expect(lines.length).toBeGreaterThan(0);
    expect([...svg.matchAll(/<text class="G-ANNO-REVS"[^>]*>(line[^<]*)</g)].map(([, words]) => words).sort()).toEqual(
      lines,
    );
    const printed = pages[page]!.texts.map(({ text }) => text).filter((words) => LINES.test(words));
    expect(printed.sort()).toEqual(lines);
  });
  test('is of the set, the sheets and the files that are asked for, marked by the newest issue of the later', async () => {
    const lot = JSON.parse(readFileSync(join(SAMPLES, 'library-lot.site.json'), 'utf8'));
    const site = toSite(lot);
    lot.issued = issueNames(site, plan(site));
    const earlier = JSON.stringify(lot);
    lot.chargers[8].amps = 24;
    lot.project = { issues: [{ mark: 'B', date: '2026-10-20', text: 'for construction' }] };
    const words = ['compare', 'earlier.site.json', 'later.site.json', '--changes', '--out', 'marked'];
    const machine = machineWith({ 'earlier.site.json': earlier, 'later.site.json': JSON.stringify(lot) });
    const asked = ['--only', 'pdf', '--set', 'permit', '--sheets', 'plan,circuits'];
    expect(await runWords([...words, ...asked], machine)).toMatchObject({ status: 0, err: '' });
    expect([...machine.written.keys()]).toEqual([join('marked', 'later.changes.pdf')]);
    const set = machine.written.get(join('marked', 'later.changes.pdf')) as Uint8Array;
    const { pages } = await readPdf(set);
    expect(pages.map(({ label }) => label)).toEqual(['G-001', 'E-101', 'E-601', 'E-602']);
    const said = pages.map(({ texts }) => texts.map(({ text }) => text).join(' '));
    expect(said[0]).toContain('PERMIT SET');
    // The charger has its own cloud though its drop stands where it stood, and its row a delta; both of issue B.
    expect(await linesOn(set, 2, 'G-ANNO-REVS')).toHaveLength(2);
    expect((await linesOn(set, 3, 'G-ANNO-REVS')).length).toBeGreaterThan(0);
    for (const page of said) expect(page).toMatch(/B 2026-10-20 for construction. Since/);
    // Where the later was not issued, what marks it is told.
    delete lot.project;
    const unissued = machineWith({ 'earlier.site.json': earlier, 'later.site.json': JSON.stringify(lot) });
    const { err } = await runWords([...words, '--only', 'changes.svg'], unissued);
    expect(err).toContain('no issue of its own: its deltas are marked 1');
    for (const stray of [
      ['--only', 'xlsx'],
      ['--set', 'permits'],
      ['--sheets', 'plans'],
    ])
      expect((await runWords([...words, ...stray], machine)).err).toMatch(/^compare --/);
    expect((await runWords(['compare', LIBRARY, LIBRARY, '--only', 'pdf'], machine)).status).toBe(2);
  });
  test('is not written without the changes', async () => {
    expect((await runWords(['compare', LIBRARY, LIBRARY, '--out', 'marked'], machineWith())).status).toBe(2);
  });
});

test('schema prints a JSON Schema', async () => {
  const { out } = await runWords(['schema'], machineWith());
  expect(JSON.parse(out).properties.format.const).toBe('overrow/site');
});

test('a slip of the pen is answered with the word that is near', async () => {
  expect((await runWords(['chek', LIBRARY], machineWith())).err).toContain('did you mean "check"?');
  expect((await runWords(['plan', '--jsn', LIBRARY], machineWith())).err).toContain('did you mean "--json"?');
});
