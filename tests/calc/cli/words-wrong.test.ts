import { describe, expect, test } from 'vitest';
import { runWords } from '../../../calc/cli/words.ts';
import { LIBRARY, machineWith } from './words-parts.ts';

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
    [['plan', LIBRARY, '--out', ''], /plan --out: nothing is given to it; see overrow plan --help\s*$/],
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

test('a slip of the pen is answered with the word that is near', async () => {
  expect((await runWords(['chek', LIBRARY], machineWith())).err).toContain('did you mean "check"?');
  expect((await runWords(['plan', '--jsn', LIBRARY], machineWith())).err).toContain('did you mean "--json"?');
});

test('of faults alike the first five are told one by one, and how many more there are; each other kind is told too', async () => {
  const drops = Array.from({ length: 40 }, (_, i) => ({ id: `D${i}`, box: [i, 0, 'high'], cord: 25 }));
  const many = JSON.stringify({ format: 'overrow/site', version: 1, units: 'ft', name: 7, drops });
  const { err } = await runWords(['plan', 'many.site.json'], machineWith({ 'many.site.json': many }));
  const lines = err.trimEnd().split('\n');
  expect(lines.filter((line) => line.includes('.box[2]: '))).toHaveLength(5);
  expect(lines.filter((line) => line.endsWith(' (and 35 more like it)'))).toEqual([
    expect.stringMatching(/^many\.site\.json: drops\[4\]\.box\[2\]: /),
  ]);
  expect(lines.filter((line) => line.includes('name: '))).toHaveLength(1);
  const pieces = JSON.stringify({ stock: 10, pieces: Array.from({ length: 400 }, () => 'long') });
  const cut = await runWords(['calc', 'cut'], machineWith({}, pieces));
  expect(cut.err.trimEnd().split('\n')).toHaveLength(5);
  expect(cut.err).toMatch(/^line 1: pieces\[0\]: .*\(and 395 more like it\)\n$/s);
});
