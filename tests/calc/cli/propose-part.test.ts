import { expect, test } from 'vitest';
import type { Machine } from '../../../calc/cli/machine.ts';
import { loadSolver } from '../../../calc/cli/solver.ts';
import { runWords } from '../../../calc/cli/words.ts';
import { packedFonts } from '../../../calc/cli/writing/fonts.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { propose } from '../../../calc/propose/propose.ts';
import { startSite } from '../../../calc/propose/start-site.ts';
import { writeSite } from '../../../routing/site/file/write.ts';
import type { SiteFile } from '../../../routing/site/site.ts';

const LOT = propose(startSite({ name: 'Four', stalls: 4, rows: 1 }), {
  what: 'all',
  cordsADrop: 1,
  prices: INVENTED_LIST,
}).file;
const [first] = LOT.drops!;
const MOVED: SiteFile = {
  ...LOT,
  drops: LOT.drops!.map((drop) => {
    if (drop !== first) return drop;
    const { retractor: _, ...rest } = drop;
    return { ...rest, box: [drop.box[0], drop.box[1] - 9, drop.box[2]] };
  }),
};
const FILES: Readonly<Record<string, string>> = {
  'lot.site.json': writeSite(LOT),
  'moved.site.json': writeSite(MOVED),
};

function machine(): Machine & { readonly written: Map<string, string | Uint8Array> } {
  const written = new Map<string, string | Uint8Array>();
  return {
    written,
    bytes: () => new Uint8Array(),
    read: (path) => {
      const text = FILES[path];
      if (text === undefined) throw new Error('no such file');
      return text;
    },
    write: (path, content) => void written.set(path, content),
    remove: (path) => void written.delete(path),
    makeFolder: () => {},
    isTaken: (path) => written.has(path),
    progress: () => {},
    today: () => '2026-11-25',
    fonts: packedFonts,
    solver: loadSolver,
    mayGoOn: () => () => true,
    input: () => '',
  };
}

const OUT = ['--out', 'next.site.json'];

test('propose --what mend says what is broken, the price left and the price mended, and writes the mend', async () => {
  const on = machine();
  const words = ['propose', 'moved.site.json', '--what', 'mend', '--before', 'lot.site.json', ...OUT];
  const { status, out } = await runWords([...words, '--json'], on);
  expect(status).toBe(0);
  const made = JSON.parse(out);
  expect(made).toMatchObject({ format: 'overrow/mend', version: 1, out: 'next.site.json', mended: { fails: 0 } });
  expect(made.broken.chargers).toEqual([LOT.chargers!.find(({ drop }) => drop === first!.id)!.id]);
  expect(made.left.fails).toBeGreaterThan(0);
  const told = await runWords([...words, '--replace'], on);
  for (const said of ['mended, written to', 'Left as it is drawn: $', 'Mended: $', 'nothing fails'])
    expect(told.out).toContain(said);
  expect(
    (await runWords(['check', 'next.site.json'], { ...on, read: (path) => String(on.written.get(path)) })).status,
  ).toBe(0);
});

test('where nothing is broken the file is written as it is', async () => {
  const on = machine();
  const { out } = await runWords(['propose', 'lot.site.json', '--what', 'mend', ...OUT], on);
  expect(out).toContain('nothing to mend');
  expect(on.written.get('next.site.json')).toBe(FILES['lot.site.json']);
});

test('propose --only has that part anew, and says what the lot costs before and after', async () => {
  const on = machine();
  const { status, out } = await runWords(
    ['propose', 'moved.site.json', '--what', 'all', '--only', first!.id, ...OUT],
    on,
  );
  expect(status).toBe(0);
  expect(out).toContain('proposed anew for 1 of its stalls');
  expect(out).toMatch(/Findings that fail: \d+ before, 0 after. Bid: \$[\d.]+ before, \$[\d.]+ after/);
});

test('stalls for later are laid out with the rest, and the first phase is checked by itself', async () => {
  const on = machine();
  const ground = writeSite(startSite({ name: 'Four', stalls: 4, rows: 1 }));
  const read = (path: string): string => (path === 'ground.site.json' ? ground : String(on.written.get(path)));
  const disk = { ...on, read };
  const { status, out } = await runWords(
    ['propose', 'ground.site.json', '--what', 'all', '--later', 'S03,04', ...OUT],
    disk,
  );
  expect(status).toBe(0);
  for (const said of [
    'Built in 2 phases',
    'Laid in phase 1 for later: ',
    'Phase 1 alone: planned by itself, nothing fails.',
  ])
    expect(out).toContain(said);
  const next = JSON.parse(read('next.site.json')) as SiteFile;
  expect(next.stalls!.map(({ phase = 1 }) => phase)).toEqual([1, 1, 2, 2]);
  const first = await runWords(['check', 'next.site.json', '--phase', '1', '--json'], disk);
  expect(first.status).toBe(0);
  expect(first.out).toContain('No charger serves 2 of 4 stalls');
  const whole = await runWords(['check', 'next.site.json', '--phase', '2'], disk);
  expect([whole.status, whole.out.includes('No charger serves')]).toEqual([0, false]);
  expect((await runWords(['check', 'next.site.json', '--phase', 'x'], disk)).err).toContain('expected a whole number');
});

test.each([
  [['--what', 'drops', '--later', 'S03'], 'is decided with all'],
  [['--what', 'all', '--later', 'none'], 'no stall is called "none"'],
  [['--what', 'all', '--row', 'S01', '--panel', 'P1'], 'one of --row, --panel and --only at a time'],
  [['--what', 'all', '--row', 'none'], 'propose --row: no stall is called "none"'],
  [['--what', 'all', '--panel', 'none'], 'propose --panel: no equipment is called "none"'],
  [['--what', 'all', '--only', 'D01,none'], 'propose --only: no element is called "none"'],
  [['--what', 'all', '--only', 'D01', '--keep', 'none'], 'propose --keep: no element is called "none"'],
  [['--what', 'all', '--keep', 'D01'], 'it goes with --row, --panel or --only'],
  [['--what', 'all', '--before', 'lot.site.json'], 'goes with --what mend'],
  [['--what', 'mend', '--row', 'S01'], 'what is broken is found by itself'],
  [['--what', 'mend', '--before', 'none.site.json'], 'propose --before: '],
  [['--what', 'equipment', '--panel', 'P1'], 'panels stay'],
])('%j is refused with a reason, and nothing is written', async (words, reason) => {
  const on = machine();
  const { status, out, err } = await runWords(['propose', 'lot.site.json', ...words, ...OUT], on);
  expect([status, out, on.written.size]).toEqual([2, '', 0]);
  expect(err).toContain(reason);
});
