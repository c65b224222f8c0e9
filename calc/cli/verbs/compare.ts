import { printLength, printTotal } from '../../../routing/site/numbers/feet-inches.ts';
import { fromFeet } from '../../../routing/site/numbers/units.ts';
import type { Units } from '../../../routing/site/schema/vocabulary.ts';
import { alternativeOf } from '../../plan/compared/alternative.ts';
import type { ChangeOrder } from '../../plan/compared/change-order.ts';
import { type Alternative, alternates, type ComparedFact, comparison } from '../../plan/compared/comparison.ts';
import { type Revision, revision } from '../../plan/compared/revision.ts';
import { REVISION_FILES } from '../../sheets/revised-set.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import { rangesOf } from '../../words/ranges.ts';
import type { Machine } from '../machine.ts';
import { done, type VerbOutcome, wrong } from '../outcome.ts';
import { pricesIn } from '../prices.ts';
import { readSites } from '../sites.ts';
import { findingLine } from '../words/summary.ts';
import { textTable } from '../words/text-table.ts';
import { drawingsWished, withDrawings } from '../writing/drawings.ts';
import { sheetsNamed } from '../writing/sheets-named.ts';
import { writeChanges } from '../writing/write-changes.ts';

const MOST = 6;

export interface CompareOptions {
  readonly json: boolean;
  readonly changes: boolean;
  /** With `changes`: material that is deducted costs the list's share for restocking. */
  readonly restocking: boolean;
  readonly prices?: string;
  /** The charging day that decides; the hardest where none is named. */
  readonly day?: string;
  /** Day of the bid. */
  readonly bidDay?: string | undefined;
  /** File of what suppliers' words mean. */
  readonly words?: string;
  /** Folder for the drawings of the changes, with `changes`. */
  readonly out?: string;
  /** With `out`: endings of the files to be written, with commas between them. */
  readonly only?: string;
  /** With `out`: what the drawing set is for, in place of what the site says. */
  readonly set?: string;
  /** With `out`: parts of the drawing set, with commas between them, in place of what the site or its purpose has. */
  readonly sheets?: string;
}

/**
 * `compare FILE FILE...`: two to six alternatives side by side, differences first; with `changes`, what the second of
 * two versions changes in the first. Lengths in the first file's units.
 */
export async function compareVerb(
  paths: readonly string[],
  options: CompareOptions,
  machine: Machine,
): Promise<VerbOutcome> {
  if (paths.length < 2 || paths.length > MOST)
    return wrong(`compare: name two to ${MOST} site files, not ${paths.length}`);
  if (options.out !== undefined && !options.changes)
    return wrong('compare --out: goes with --changes, for the drawings of them');
  if (options.restocking && !options.changes) return wrong('compare --restocking: goes with --changes');
  if (options.changes && paths.length !== 2) return wrong('compare --changes: name two versions, the earlier first');
  if (options.out === undefined && (options.only ?? options.set ?? options.sheets) !== undefined)
    return wrong('compare --only, --set, --sheets: go with --changes --out');
  const files = sheetsNamed(options.only, REVISION_FILES);
  if (!files.ok) return wrong(`compare ${files.reason}`);
  const drawings = drawingsWished(options);
  if (!drawings.ok) return wrong(`compare ${drawings.reason}`);
  const prices = pricesIn(options.prices, machine, options);
  if (!prices.ok) return wrong(prices.reason);
  const read = readSites(paths, machine);
  if (!read.ok) return wrong(read.reason);
  const days = new Set(read.sites.flatMap(({ site }) => site.days.map(({ id }) => id)));
  if (options.day !== undefined && !days.has(options.day))
    return wrong(`compare --day: no file has a day "${options.day}"; there are ${[...days].join(', ') || 'none'}`);
  const alternatives = read.sites.map(({ path, site }) =>
    alternativeOf(path, withDrawings(site, drawings.wish), prices.list),
  );
  const units = read.sites[0]?.site.units ?? 'ft';
  const facts = comparison(alternatives, options.day ?? null);
  const changes = options.changes
    ? revision(
        alternatives[0] as Alternative,
        alternatives[1] as Alternative,
        options.restocking ? { restocking: prices.list } : undefined,
      )
    : undefined;
  const [before, after] = alternatives as [Alternative, Alternative];
  const marked =
    options.out !== undefined && changes
      ? await writeChanges({ before, after, changes }, files.files, options.out, machine)
      : undefined;
  if (marked && marked.status !== 0) return marked;
  const told = (out: string): VerbOutcome => ({ ...done(out), err: marked?.err ?? '' });
  if (options.json) return told(`${JSON.stringify(written(alternatives, facts, changes, prices.list.name, units))}\n`);
  const parts = [
    sideBySide(alternatives, facts, units),
    alternates(alternatives)
      .map(({ name, adds }) => `Alternate ${name}: ${adds < 0 ? 'deduct' : 'add'} $${Math.abs(adds).toFixed(2)}`)
      .join('\n'),
    ...(changes ? [changesText(changes, units)] : []),
    ...(marked ? [`Drawings of the changes:\n${marked.out.trimEnd()}`] : []),
    `Prices: ${prices.list.name}.`,
    CAUTIONS,
  ];
  return told(`${parts.join('\n\n')}\n`);
}

function sideBySide(alternatives: readonly Alternative[], facts: readonly ComparedFact[], units: Units): string {
  const differing = facts.filter(({ differs }) => differs).length;
  return textTable(facts, [
    {
      head: differing > 0 ? `${differing} figures differ` : 'nothing differs',
      text: ({ fact, differs }) => `${differs ? '' : '  same: '}${fact}`,
    },
    ...alternatives.map(({ name }, i) => ({
      head: name,
      text: ({ values, unit, isTotal }: ComparedFact) => shown(values[i] ?? null, unit, units, isTotal),
      align: 'right' as const,
    })),
  ]);
}

function shown(value: number | null, unit: string, units: Units, isTotal: boolean): string {
  if (value === null) return 'none';
  if (unit === 'ft') return isTotal ? printTotal(value, units) : printLength(value, units);
  if (unit === 'dollars') return `$${value.toFixed(2)}`;
  return `${Number(value.toFixed(2))}${unit === '%' ? '' : ' '}${unit}`;
}

function changesText({ elements, quantities, cost, order, findings }: Revision, units: Units): string {
  const lines = [
    `Changed elements: ${elements.length}`,
    ...elements.map(
      ({ change, list, id, lines: of }) =>
        `  ${change} ${id} (${list})${of.length > 0 ? `: lines ${rangesOf(of)}` : ''}`,
    ),
    `Changed quantities: ${quantities.length}`,
    ...quantities.map(
      ({ item, spec, unit, before, after }) =>
        `  ${item}, ${spec}: ${shown(before, unit, units, true)} to ${shown(after, unit, units, true)} (${after > before ? '+' : '-'}${shown(Math.abs(after - before), unit, units, true)})`,
    ),
    `Change order: ${order.lines.length} lines`,
    ...orderText(order, units),
    `Price: $${cost.before.toFixed(2)} to $${cost.after.toFixed(2)}`,
    `Findings gone: ${findings.gone.length}`,
    ...findings.gone.map((finding) => `  ${findingLine(finding)}`),
    `Findings come: ${findings.come.length}`,
    ...findings.come.map((finding) => `  ${findingLine(finding)}`),
  ];
  return lines.join('\n');
}

/** Each line of a change order with material, hours and extension; then what is laid on them, down to the total. */
function orderText({ lines, adds, deducts, markups, restocking, total }: ChangeOrder, units: Units): readonly string[] {
  const money = (dollars: number): string => `${dollars < 0 ? '-' : '+'}$${Math.abs(dollars).toFixed(2)}`;
  const table = textTable(lines, [
    { head: '  line', text: ({ number }) => `  ${number}`, align: 'right' },
    { head: 'item', text: ({ item, spec }) => `${item}, ${spec}` },
    {
      head: 'quantity',
      text: ({ before, after, unit }) =>
        `${after < before ? '-' : '+'}${shown(Math.abs(after - before), unit, units, true)}`,
      align: 'right',
    },
    { head: 'material', text: ({ material }) => money(material), align: 'right' },
    { head: 'hours', text: ({ hours }) => hours.toFixed(2), align: 'right' },
    { head: 'extension', text: ({ extension }) => money(extension), align: 'right' },
  ]);
  return [
    ...(lines.length > 0 ? [table] : []),
    `  adds ${money(adds)}, deducts ${money(deducts)}`,
    ...markups.map(({ name, dollars }) => `  ${name} ${money(dollars)}`),
    ...(restocking === null ? [] : [`  restocking ${money(restocking)}`]),
    `  total of the change order ${money(total)}`,
  ];
}

function written(
  alternatives: readonly Alternative[],
  facts: readonly ComparedFact[],
  changes: Revision | undefined,
  prices: string,
  units: Units,
): object {
  const inUnits = (value: number | null, unit: string): number | null =>
    value !== null && unit === 'ft' ? fromFeet(value, units) : value;
  const unitOf = (unit: string): string => (unit === 'ft' ? units : unit);
  return {
    format: 'overrow/comparison',
    version: 1,
    prices,
    files: alternatives.map(({ name, site }) => ({ file: name, site: site.name })),
    alternates: alternates(alternatives),
    facts: facts.map(({ fact, unit, better, values, differs }) => ({
      fact,
      unit: unitOf(unit),
      better,
      values: values.map((value) => inUnits(value, unit)),
      differs,
    })),
    ...(changes && {
      changes: {
        ...changes,
        quantities: changes.quantities.map((row) => ({
          ...row,
          unit: unitOf(row.unit),
          before: inUnits(row.before, row.unit),
          after: inUnits(row.after, row.unit),
        })),
        order: {
          ...changes.order,
          lines: changes.order.lines.map((line) => ({
            ...line,
            unit: unitOf(line.unit),
            before: inUnits(line.before, line.unit),
            after: inUnits(line.after, line.unit),
          })),
        },
      },
    }),
  };
}
