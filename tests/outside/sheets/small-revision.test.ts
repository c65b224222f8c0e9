import { join } from 'node:path';
import DxfParser, { type ILwpolylineEntity, type ITextEntity } from 'dxf-parser';
import { describe, expect, test } from 'vitest';
import { runWords } from '../../../calc/cli/words.ts';
import { machineWith } from '../../calc/cli/words-parts.ts';
import { linesOn, type ReadPdf, readPdf } from './pdf/read-pdf.ts';

/** The mark of the revision: no other word of the sheets reads so. */
const MARK = 'Q7';
const DROP = /^D\d+$/;
/** `lines 3, 5-9` of the change order, beside a cloud. */
const LINES = /^lines? [\d, -]+$/;

interface Block {
  readonly at: readonly [number, number];
  readonly values: Readonly<Record<string, string>>;
}

/** Blocks of a DXF that have attributes, with their values by tag: from its pairs of codes, and not by our own reader. */
function blocksOf(text: string): readonly Block[] {
  const pairs = text.split(/\r?\n/);
  const blocks: { at: [number, number]; values: Record<string, string> }[] = [];
  let [kind, value] = ['', ''];
  for (let i = 0; i + 1 < pairs.length; i += 2) {
    const [code, word] = [Number(pairs[i]), pairs[i + 1]!];
    if (code === 0) kind = word;
    if (code === 0 && kind === 'INSERT') blocks.push({ at: [Number.NaN, Number.NaN], values: {} });
    const block = blocks.at(-1);
    if (kind === 'INSERT' && code === 10) block!.at[0] = Number(word);
    else if (kind === 'INSERT' && code === 20) block!.at[1] = Number(word);
    else if (kind === 'ATTRIB' && code === 1) value = word;
    else if (kind === 'ATTRIB' && code === 2) block!.values[word] = value;
  }
  return blocks.filter(({ values }) => values.TAG !== undefined);
}

/** What each charger goes by in a DXF: its drop, its circuit, and the conduits and boxes on its way from the equipment. */
function namesIn(blocks: readonly Block[]): ReadonlyMap<string, string> {
  const values = blocks.map((block) => block.values);
  const names = new Map<string, string>();
  const wired = values.flatMap(({ TAG: drop, CHARGER = '', FROM: from, ...more }) =>
    CHARGER.split(', ').map((charger, i) => ({
      drop,
      charger,
      from,
      circuit: more[i === 0 ? 'CIRCUIT' : `CIRCUIT${i + 1}`],
    })),
  );
  for (const { drop, charger, from, circuit } of wired) {
    if (charger === '') continue;
    names.set(`drop of ${charger}`, drop!);
    names.set(`circuit of ${charger}`, circuit!);
    const way = values.filter(({ CIRCUITS }) => CIRCUITS?.split(', ').includes(charger));
    // Drops at one place share a box, whose name the conduit ends with; one that no conductor serves has no conduits.
    let at = from;
    for (let place = 1; place <= way.length; place++) {
      const conduit = way.find(({ FROM }) => FROM === at);
      if (conduit === undefined) throw new Error(`no conduit of ${charger} leads on from ${at}`);
      names.set(`conduit ${place} of ${charger}`, conduit.TAG!);
      names.set(`box ${place} of ${charger}`, conduit.TO!);
      at = conduit.TO;
    }
  }
  return names;
}

interface Clouded {
  /** Middles of the clouds in the order of drawing, y up, in the units of the file. */
  readonly clouds: readonly Place[];
  /** The drops whose names stand nearest to the middle of each, nearest first. */
  readonly drops: readonly (readonly string[])[];
  readonly deltas: number;
  /** The words of the change order beside clouds. */
  readonly lines: readonly string[];
}

type Place = readonly [number, number];

interface Word {
  readonly text: string;
  /** Its middle. */
  readonly at: Place;
}

const apart = ([ax, ay]: Place, [bx, by]: Place): number => Math.hypot(ax - bx, ay - by);

const boxOf = (points: readonly Place[]): readonly [number, number, number, number] => {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
};

const middleOf = ([a, b, c, d]: readonly number[]): Place => [(a! + c!) / 2, (b! + d!) / 2];

function clouded(clouds: readonly Place[], words: readonly Word[], names: readonly Word[] = words): Clouded {
  const named = names.filter(({ text }) => DROP.test(text));
  return {
    clouds,
    drops: clouds.map((to) => [...named].sort((a, b) => apart(a.at, to) - apart(b.at, to)).map(({ text }) => text)),
    deltas: words.filter(({ text }) => text === MARK).length,
    lines: words.flatMap(({ text }) => (LINES.test(text) ? [text] : [])).sort(),
  };
}

/** Of the model of a DXF. Deltas have three corners; drops are the blocks with their names. */
function cloudsOfDxf(text: string, blocks: readonly Block[]): Clouded {
  const own = new DxfParser().parseSync(text)!.entities.filter(({ layer }) => layer === 'G-ANNO-REVS-IDEN');
  const clouds = own
    .filter((one): one is ILwpolylineEntity => one.type === 'LWPOLYLINE' && (one as ILwpolylineEntity).shape)
    .filter(({ vertices }) => vertices.length > 3)
    .map(({ vertices }) => middleOf(boxOf(vertices.map(({ x, y }) => [x, y] as const))));
  const words = own.flatMap((one): Word[] =>
    one.type === 'TEXT' ? [{ text: (one as ITextEntity).text, at: [0, 0] }] : [],
  );
  return clouded(
    clouds,
    words,
    blocks.map(({ at, values }) => ({ text: values.TAG!, at })),
  );
}

function cloudsOfSvg(markup: string): Clouded {
  const words = [...markup.matchAll(/<text([^>]*)>([^<]*)</g)].map(([, tag, text]): Word => {
    const number = (name: string): number => Number(new RegExp(` ${name}="([-\\d.]+)"`).exec(tag!)?.[1] ?? 0);
    return { text: text!, at: [number('x') + number('textLength') / 2, number('font-size') / 3 - number('y')] };
  });
  const clouds = [...markup.matchAll(/<polygon class="G-ANNO-REVS" points="([^"]+)" fill="none"/g)]
    .map(([, points]) => points!.split(' ').map((point) => point.split(',').map(Number) as [number, number]))
    .filter(({ length }) => length > 3)
    .map((points) => middleOf(boxOf(points.map(([x, y]) => [x, -y] as const))));
  return clouded(clouds, words);
}

/** Of the plan of a set. Each cloud is drawn right before its delta, in which the mark stands. */
async function cloudsOfPdf(bytes: Uint8Array, { pages }: ReadPdf): Promise<Clouded> {
  const number = pages.findIndex(({ label }) => label === 'E-101');
  const words = pages[number]!.texts.map(
    ({ text, x, y, width, size }): Word => ({ text, at: [x + width / 2, y + 0.35 * size] }),
  );
  const marks = words.filter(({ text }) => text === MARK);
  const boxes = await linesOn(bytes, number + 1, 'G-ANNO-REVS');
  // The mark stands in the middle of its delta; a leader may go past one.
  const marksIn = ([a, b, c, d]: readonly number[]): readonly Word[] =>
    marks.filter(({ at: [x, y] }) => Math.abs(x - (a! + c!) / 2) < 1 && y > b! && y < d! && c! - a! < 20);
  const clouds = boxes.filter((_, i) => boxes[i + 1] !== undefined && marksIn(boxes[i + 1]!).length > 0);
  const inDeltas = new Set(boxes.flatMap(marksIn));
  return clouded(
    clouds.map(middleOf),
    words.filter((word) => word.text !== MARK || inDeltas.has(word)),
  );
}

/** Where the clouds lie however the drawing is moved, turned and scaled: the first at 0, the second at 1. */
function inFrame([first, second, ...more]: readonly Place[]): readonly Place[] {
  const [ux, uy] = [second![0] - first![0], second![1] - first![1]];
  const square = ux * ux + uy * uy;
  return more.map(([x, y]) => {
    const [dx, dy] = [x - first![0], y - first![1]];
    return [(dx * ux + dy * uy) / square, (dy * ux - dx * uy) / square];
  });
}

/** A sample as issued, and the same with one drop moved along its row and one charger of other amperes. */
async function versionsOf(name: string) {
  const machine = machineWith();
  const issue = ['issue', `samples/${name}.site.json`, '--out', 'issued', '--mark', 'A'];
  expect(await runWords(issue, machine)).toMatchObject({ status: 0 });
  const earlier = String(machine.written.get('issued'));
  const lot = JSON.parse(earlier);
  const [moved, changed] = [lot.chargers[Math.floor(lot.chargers.length / 2)], lot.chargers.at(-2)];
  const drop = lot.drops.find(({ id }: { id: string }) => id === moved.drop);
  drop.box[0] += 1.5;
  if (drop.retractor) drop.retractor[0] += 1.5;
  changed.amps = 24;
  lot.project.issues.push({ mark: MARK, date: '2026-11-28', text: 'field change' });
  return { earlier, later: JSON.stringify(lot), moved, changed };
}

describe.each(['library-lot', 'library-pedestals', 'fleet-yard', 'hospital-lot'])('%s, issued and then', (name) => {
  test('one drop moved and one charger changed: every name stays, and PDF, DXF and SVG cloud those two', async () => {
    const { earlier, later, moved, changed } = await versionsOf(name);
    const machine = machineWith({ 'earlier.site.json': earlier, 'later.site.json': later });
    const first = ['plan', 'earlier.site.json', '--out', 'sheets', '--only', 'dxf'];
    expect(await runWords(first, machine)).toMatchObject({ status: 0 });
    const marked = ['compare', 'earlier.site.json', 'later.site.json', '--changes', '--out', 'sheets'];
    const wished = ['--only', 'changes.pdf,changes.dxf,changes.svg', '--sheets', 'plan,circuits,conduits'];
    expect(await runWords([...marked, ...wished], machine)).toMatchObject({ status: 0, err: '' });
    const written = (file: string) => machine.written.get(join('sheets', file))!;
    const dxfAt = (file: string) => new TextDecoder().decode(written(file) as Uint8Array<ArrayBuffer>);
    const [dxf, svg] = [dxfAt('later.changes.dxf'), String(written('later.changes.svg'))];
    const set = written('later.changes.pdf') as Uint8Array;
    const pdf = await readPdf(set);

    const [blocksBefore, blocks] = [blocksOf(dxfAt('earlier.dxf')), blocksOf(dxf)];
    const [before, after] = [namesIn(blocksBefore), namesIn(blocks)];
    const chargers: readonly { readonly id: string }[] = JSON.parse(earlier).chargers;
    expect(chargers.filter(({ id }) => !/^[A-Z]+\d*-\d+/.test(before.get(`circuit of ${id}`)!))).toEqual([]);
    const others = [...new Set([...before.keys(), ...after.keys()])].filter((of) => before.get(of) !== after.get(of));
    expect(others).toEqual([]);

    // What was issued is what the schedules of the revision print, and no conduit has another name there.
    const printed = pdf.pages
      .filter(({ label }) => label.startsWith('E-6'))
      .flatMap(({ texts }) => texts.flatMap(({ text }) => text.split(/,? /)));
    const issued = (kind: string) => new Set([...before].flatMap(([of, to]) => (of.startsWith(kind) ? [to] : [])));
    const known = new Set([...issued('conduit'), ...issued('box')]);
    expect([...known].filter((one) => !printed.includes(one))).toEqual([]);
    expect(printed.filter((word) => /^[A-Z]+\d*-\d+\.J?\d+$/.test(word) && !known.has(word))).toEqual([]);

    // The drop itself, that of the charger, which stands there, and conduits of theirs of another size.
    const sizes = new Map(blocksBefore.map(({ values }) => [values.TAG, values.SIZE]));
    const resized = blocks.filter(({ values }) => values.CIRCUITS && values.SIZE !== sizes.get(values.TAG));
    for (const { values } of resized)
      expect(values.CIRCUITS!.split(', ')).toEqual(expect.arrayContaining([changed.id]));
    const drops = [moved.drop, changed.drop];
    const inDxf = cloudsOfDxf(dxf, blocks);
    expect(inDxf.clouds).toHaveLength(2 + resized.length);
    expect(inDxf.drops.slice(0, 2).map(([nearest]) => nearest)).toEqual(drops);
    for (const told of [inDxf, cloudsOfSvg(svg), await cloudsOfPdf(set, pdf)]) {
      // In a dense row the name of the next drop may be written nearer.
      drops.forEach((drop, i) => {
        expect(told.drops[i]!.slice(0, 2)).toContain(drop);
      });
      expect(told.deltas).toBe(told.clouds.length);
      expect(told.lines).toEqual(inDxf.lines);
      const [places, wanted] = [inFrame(told.clouds), inFrame(inDxf.clouds)];
      expect(places).toHaveLength(wanted.length);
      places.forEach((place, i) => {
        expect(apart(place, wanted[i]!)).toBeLessThan(0.01);
      });
    }
    expect(inDxf.lines).toHaveLength(2);
    const words = pdf.pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');
    const listed = [...words.matchAll(/(\S+) \((\w+)\) (?:added|removed|moved|changed)/g)].map(([row]) => row);
    expect([...new Set(listed)].sort()).toEqual(
      [`${moved.drop} (drops) moved`, `${changed.id} (chargers) changed`].sort(),
    );
  });
});
