import type { Rules } from '../../routing/site/site.ts';
import type { TakeoffRow } from '../plan-file.ts';
import { byWords } from '../prices/kind.ts';
import { STICK } from '../prices/spec.ts';
import { type Part, partsOf, type Sum } from './tally.ts';

/** Items in the order in which an estimator walks a job: from the supply out to the cord. */
const ORDER: ReadonlyMap<string, number> = new Map(
  [
    'service equipment',
    'switchboard',
    'panelboard',
    'transformer',
    'disconnect',
    'inverter',
    'feeder conductor',
    'feeder grounding conductor',
    'feeder bonding conductor',
    'feeder raceway',
    'termination',
    'lug',
    'feeder over 1,000 V',
    'main bonding jumper',
    'system bonding jumper',
    'electrode conductor',
    'electrode connection',
    'ground rod',
    'ground ring',
    'device over 1,000 V',
    'breaker',
    'conductor',
    'grounding conductor',
    'pilot conductor',
    'raceway',
    'raceway stick',
    'field bend',
    'elbow',
    'coupling',
    'connector',
    'bushing',
    'expansion fitting',
    'strap',
    'hanger',
    'trapeze',
    'threaded rod',
    'beam clamp',
    'stringer',
    'tray support',
    'conduit body',
    'pull point',
    'junction box',
    'cover',
    'handhole',
    'trench',
    'core drill',
    'pedestal',
    'bollard',
    'charging module',
    'retractor',
    'cord',
    'label',
    'test',
  ].map((item, place) => [item, place]),
);

const WASTE: Readonly<Record<string, 'conductor' | 'raceway'>> = {
  'feeder conductor': 'conductor',
  'feeder grounding conductor': 'conductor',
  'feeder bonding conductor': 'conductor',
  'electrode conductor': 'conductor',
  'ground ring': 'conductor',
  'feeder raceway': 'raceway',
  conductor: 'conductor',
  'grounding conductor': 'conductor',
  'pilot conductor': 'conductor',
  raceway: 'raceway',
  'threaded rod': 'raceway',
  stringer: 'raceway',
};

/** Takeoff rows of sums: waste added to what is cut from stock, raceways in sticks besides, in an estimator's order. */
export function rowsOf(sums: readonly Sum[], rules: Rules): readonly TakeoffRow[] {
  const rows: { readonly place: string; readonly row: TakeoffRow }[] = [];
  for (const sum of sums) {
    const { kind, net } = sum;
    const wasted = WASTE[kind.item];
    const waste = wasted === undefined ? 0 : rules.waste[wasted];
    const basis = wasted === undefined ? kind.basis : `${kind.basis}; plus ${percent(waste)} waste`;
    const share = net > 0 ? sum.high / net : 0;
    rows.push({ place: placeOf(kind.item, kind.spec), row: rowOf(sum, kind, net * (1 + waste), share, basis) });
    if (kind.item === 'raceway' && !kind.spec.startsWith('LFMC')) {
      const sticks = Math.ceil((net * (1 + waste)) / STICK - 1e-9);
      const name = { item: 'raceway stick', spec: `${kind.spec}, ${STICK} ft`, unit: 'each' };
      const row = rowOf(sum, name, sticks, share, `length with waste in ${STICK} ft lengths, rounded up`);
      rows.push({ place: placeOf(name.item, name.spec), row });
    }
  }
  return rows.sort((a, b) => (a.place < b.place ? -1 : a.place > b.place ? 1 : 0)).map(({ row }) => row);
}

/** Sorts rows: the item's place in the order, then the spec with its numbers by value. */
const placeOf = byWords((item, spec) => {
  const inWords = spec.replace(NUMBER, (_, whole = '0', top, bottom, plain) => {
    const value = plain === undefined ? Number(whole) + Number(top) / Number(bottom) : Number(plain);
    return value.toFixed(3).padStart(12, '0');
  });
  return `${String(ORDER.get(item) ?? ORDER.size).padStart(3, '0')} ${inWords}`;
});

/** `1-1/4`, `3/4`, `250`, `0.75`; an aught size such as `4/0` is none. */
const NUMBER = /(?:(\d+)-)?(\d+)\/([1-9]\d*)|(\d+(?:\.\d+)?)(?!\/)/g;

const percent = (share: number): string => `${Number((100 * share).toPrecision(6))}%`;

/** What a row is made of is gathered when it is asked for: a large lot has many parts, and few are opened. */
function rowOf(
  sum: Sum,
  { item, spec, unit }: Pick<TakeoffRow, 'item' | 'spec' | 'unit'>,
  quantity: number,
  highShare: number,
  basis: string,
): TakeoffRow {
  let parts: readonly Part[] | undefined;
  let of: readonly string[] | undefined;
  return {
    item,
    spec,
    quantity,
    high: quantity * highShare,
    unit,
    basis,
    get parts() {
      parts ??= partsOf(sum);
      return parts;
    },
    get of() {
      of ??= [...new Set(this.parts.map((part) => part.of))];
      return of;
    },
  };
}
