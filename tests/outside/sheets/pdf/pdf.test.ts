import { beforeAll, describe, expect, test } from 'vitest';
import { chargerUse } from '../../../../calc/day/figures/charger-use.ts';
import { groundOf, siteDay, strategyOf } from '../../../../calc/day/planned-days.ts';
import { sheetShape } from '../../../../calc/sheets/pdf/kit/paper.ts';
import { typicalSections } from '../../../../calc/space/section/typical.ts';
import { printLength } from '../../../../routing/site/numbers/feet-inches.ts';
import { plannedSample } from '../planned-samples.ts';
import { setOf } from './drawing-set.ts';
import { close, textOf, words } from './pdf-parts.ts';
import { lineFrom, type ReadPage, type ReadPdf, readPdf } from './read-pdf.ts';
import { cornersOf, overlapping } from './text-boxes.ts';

/** Pages of a set whose labels begin so, with a text on them that says what they hold. */
const pagesWith = ({ pages }: ReadPdf, label: string, text: RegExp): readonly ReadPage[] =>
  pages.filter((page) => page.label.startsWith(label) && words(page).some((one) => text.test(one)));

/** The lines of the schedules that begin with one of some ids, by id. */
function schedule(pdf: ReadPdf, title: RegExp, ids: ReadonlySet<string>): ReadonlyMap<string, readonly string[]> {
  const lines = new Map<string, string[]>();
  for (const page of pagesWith(pdf, 'E-6', title))
    for (const text of page.texts)
      if (ids.has(text.text)) lines.set(text.text, [...(lines.get(text.text) ?? []), lineFrom(page, text)]);
  return lines;
}

describe.each([
  ['library-lot', 'ANSI D'],
  ['library-lot', 'tabloid'],
  ['fleet-yard', 'ANSI D'],
  ['fleet-yard', 'tabloid'],
  ['hospital-lot', 'ANSI D'],
  ['hospital-lot', 'tabloid'],
] as const)('the drawing set of %s on %s, read by pdf.js', (name, paper) => {
  const sample = plannedSample(name);
  const { site, planned } = sample;
  let pdf: ReadPdf;
  beforeAll(async () => {
    pdf = await readPdf(await setOf(sample, { paper }));
  });

  test('every page is a sheet of that paper', () => {
    // ANSI/ASME Y14.1: D is 34 x 22 in, B (tabloid) 17 x 11 in.
    const [width, height] = paper === 'ANSI D' ? [34 * 72, 22 * 72] : [17 * 72, 11 * 72];
    for (const page of pdf.pages) expect([page.width, page.height]).toEqual([width, height]);
  });
  test('sheets are numbered by discipline and type, and each prints its own number and place', () => {
    const labels = pdf.pages.map(({ label }) => label);
    expect(new Set(labels).size).toBe(labels.length);
    // The legend stands on the cover where that has room for it.
    if (!labels.includes('E-001')) expect(textOf(pdf, /^G-001/)).toContain('SYMBOLSOFTHEPLANS');
    for (const first of ['G-001', 'E-101', 'E-201', 'E-501', 'E-601']) expect(labels).toContain(first);
    expect(labels).toEqual([...labels.filter((l) => l[0] === 'G'), ...labels.filter((l) => l[0] === 'E').sort()]);
    pdf.pages.forEach((page, i) => {
      expect(words(page)).toContain(page.label);
      expect(words(page)).toContain(`Sheet ${i + 1} of ${pdf.pages.length}`);
    });
  });
  test('the index on the cover and the outline list every sheet', () => {
    const cover = textOf(pdf, /^G-/);
    pdf.pages.forEach(({ label }, i) => {
      expect(cover).toContain(label);
      expect(pdf.outline[i]!.startsWith(`${label} `)).toBe(true);
    });
  });
  test('every sheet carries name, date, code, file and cautions', () => {
    for (const page of pdf.pages) {
      const all = close(words(page).join(''));
      for (const said of [
        '2026-11-25',
        site.rules.code,
        'lot.site.json',
        'NOT FOR CONSTRUCTION',
        'until reviewed and stamped',
        'Nothing here is a statement of compliance',
      ])
        expect(all).toContain(close(said));
      expect(all).toContain(close(site.name));
    }
  });
  test('the circuit schedule gives every run its drop, breaker, lengths, drops and volts', () => {
    const lines = schedule(pdf, /^CIRCUIT AND RUN SCHEDULE/, new Set(planned.runs.map(({ charger }) => charger)));
    for (const run of planned.runs) {
      const mine = (lines.get(run.charger) ?? []).join(' ');
      expect(mine.startsWith(`${run.charger}${run.drop}`)).toBe(true);
      const circuit = planned.circuits.find(({ charger }) => charger === run.charger);
      if (run.length === null || circuit === undefined) {
        expect(mine).toContain('norun');
        continue;
      }
      expect(mine).toContain(`${circuit.breakerAmps}A${circuit.phases.length}P`);
      expect(mine).toContain(
        close(`${printLength(run.length, site.units)}${printLength(run.conductorLength!, site.units)}`),
      );
      expect(mine).toContain(
        `${circuit.branchDropPercent.toFixed(2)}${circuit.worstDropPercent.toFixed(2)}${circuit.voltsAtBox.toFixed(1)}`,
      );
    }
  });
  test('the conduit schedule gives every conduit its ends, size and length', () => {
    const lines = schedule(pdf, /^CONDUIT SCHEDULE/, new Set(planned.conduits.map(({ id }) => id)));
    for (const { id, from, to, method, tradeSize, length } of planned.conduits)
      expect(
        (lines.get(id) ?? []).some((line) =>
          line.startsWith(close(`${id}${from}${to}${method}${tradeSize}"${printLength(length, site.units)}`)),
        ),
      ).toBe(true);
  });
  test('the takeoff gives every item its quantity', () => {
    const text = textOf(pdf, /^E-6/);
    for (const { quantity, unit } of planned.takeoff) {
      // Nobody buys a tenth of a foot of wire.
      const feet = quantity.toLocaleString('en-US', { maximumFractionDigits: quantity < 1 ? 1 : 0 });
      const printed = unit === 'ft' ? `${feet}ft` : `${Number(quantity.toFixed(2))}${unit}`;
      expect(text).toContain(close(printed));
    }
  });
  test('there is a strip for every run, with its length and its conduits', () => {
    const strips = textOf(pdf, /^E-2/);
    for (const run of planned.runs) {
      if (run.length === null) continue;
      expect(strips).toContain(
        close(`Run ${printLength(run.length, site.units)}, conductor ${printLength(run.conductorLength!, site.units)}`),
      );
    }
    for (const { id, method, tradeSize, length } of planned.conduits)
      expect(strips).toContain(close(`${id} ${tradeSize}" ${method} ${printLength(length, site.units)}`));
  });
  test('the enlarged plans number every drop, or the one plan that needs none beside it', () => {
    const enlarged = pdf.pages.filter(({ label }) => /^E-4/.test(label));
    const plans = new Set(
      (enlarged.length > 0 ? enlarged : pdf.pages.filter(({ label }) => label === 'E-101')).flatMap(words),
    );
    for (const { id } of site.drops)
      expect([...plans].some((text) => text === id || text.startsWith(`${id} `))).toBe(true);
  });
  test('each section is marked on the plans by its title', () => {
    const plans = textOf(pdf, /^E-[14]/);
    const sections = typicalSections(site, planned);
    expect(sections.length).toBeGreaterThan(1);
    for (const { name } of sections) expect(plans).toContain(close(name));
  });
  test('the one-line names every piece of equipment and every feeder with its breaker', () => {
    const text = textOf(pdf, /^E-60/);
    for (const { id, kind } of site.equipment) expect(text).toContain(close(`${id} ${kind}`));
    for (const { id, breakerAmps } of site.feeders) expect(text).toContain(close(`${id} ${breakerAmps} A`));
  });
  test('each charging day has a sheet: what every rule gives, a row for each charger, and the assumptions', () => {
    for (const day of planned.days) {
      const text = textOf(pdf, /^E-6/);
      expect(text).toContain(close(`CHARGING DAY ${day.id.toUpperCase()}`));
      for (const { peakKw, cost } of Object.values(day.strategies))
        expect(text).toContain(close(`${peakKw.toFixed(1)}${cost.toFixed(2)}`));
      const sheet = pdf.pages.find((page) => words(page).some((word) => /^CHARGING DAY/.test(word)))!;
      // Where there are more chargers than rows, the sheet says how many it leaves out.
      const left = site.chargers.filter(({ id }) => !words(sheet).includes(id)).length;
      expect(left).toBeLessThan(site.chargers.length / 4);
      if (left > 0) expect(close(words(sheet).join(''))).toContain(close(`${left} chargers not drawn`));
      expect(close(words(sheet).join(''))).toContain(close('Planning figures: real cars and drivers differ'));
    }
  });
  test('each charger has the energy and cost that it meters on a charging day, and all together are told', () => {
    for (const { id } of planned.days) {
      const day = site.days.find((one) => one.id === id)!;
      const ground = groundOf(site);
      const read = siteDay(day, ground);
      if (!read.ok) throw new Error(id);
      const uses = chargerUse(read.day, strategyOf(day, ground));
      const lines = schedule(pdf, /^By stall/i, new Set(uses.map(({ charger }) => charger)));
      for (const { charger, periodEnergy, cost } of uses)
        expect(close(lines.get(charger)!.join(' '))).toContain(close(`${periodEnergy.toFixed(0)}${cost!.toFixed(2)}`));
      const sum = uses.reduce((all, { cost }) => all + cost!, 0);
      expect(textOf(pdf, /^E-6/)).toContain(close(sum.toFixed(2)));
    }
  });
  test('the plan is to scale: gridlines stand as far apart as they are', () => {
    const page = pdf.pages.find(({ label }) => label === 'E-101')!;
    const scales = words(page).filter((text) => / = |^1:/.test(text));
    const perFoot = pointsOf(scales[0]!);
    const [a, b] = [site.gridlines.x[0]!, site.gridlines.x.at(-1)!];
    const top = Math.max(
      ...page.texts.filter(({ text, x }) => text === a.label && x < page.width * 0.8).map(({ y }) => y),
    );
    const middle = (label: string): number => {
      const found = page.texts.filter(({ text, y }) => text === label && Math.abs(y - top) < 0.5);
      expect(found).toHaveLength(1);
      return found[0]!.x + found[0]!.width / 2;
    };
    expect(middle(b.label) - middle(a.label)).toBeCloseTo((b.at - a.at) * perFoot, 1);
  });
  test('nothing is written outside the border, and no word lies over another', () => {
    const { frame } = sheetShape(paper);
    for (const page of pdf.pages) {
      const outside = page.texts.filter((text) =>
        cornersOf(text).some(
          ([x, y]) => x < frame.x || x > frame.x + frame.width || y < frame.y || y > frame.y + frame.height,
        ),
      );
      expect(outside).toEqual([]);
      expect(overlapping(page.texts)).toEqual([]);
    }
  });
  test('no lettering is smaller than 0.08 in, on ANSI D than 3/32 in', () => {
    const least = Math.min(...pdf.pages.flatMap(({ texts }) => texts.map(({ size }) => size)));
    expect((least * 0.7) / 72).toBeGreaterThan((paper === 'ANSI D' ? 3 / 32 : 0.08) - 1e-4);
  });
});

/** Points a foot of a scale as a title block says it. */
function pointsOf(says: string): number {
  const [, over, under = '1'] = /^(\d+)(?:\/(\d+))?" = 1'-0"$/.exec(says) ?? [];
  if (over !== undefined) return (72 * Number(over)) / Number(under);
  const [, feet] = /^1" = (\d+)'$/.exec(says) ?? [];
  return 72 / Number(feet);
}

test('the check for words over one another finds those that are', () => {
  const at = (x: number, y: number, turn = 0) => ({ text: `${x} ${y}`, x, y, width: 40, size: 10, turn });
  expect(overlapping([at(0, 0), at(35, 3)])).toHaveLength(1);
  expect(overlapping([at(0, 0), at(20, -10, 90)])).toHaveLength(1);
  expect(overlapping([at(0, 0), at(0, 12), at(41, 0), at(100, -20, 45)])).toEqual([]);
});
