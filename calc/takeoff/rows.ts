import type { Rules } from '../../routing/site/site.ts';
import type { TakeoffRow } from '../plan-shape.ts';
import { STICK } from './spec.ts';
import { type Part, partsOf, type Sum } from './tally.ts';

/** Items in the order in which an estimator walks a job: from the supply out to the cord. */
const ORDER: ReadonlyMap<string, number> = new Map(
  [
    'switchboard',
    'panelboard',
    'transformer',
    'disconnect',
    'inverter',
    'feeder conductor',
    'breaker',
    'conductor',
    'grounding conductor',
    'pilot conductor',
    'raceway',
    'raceway stick',
    'elbow',
    'coupling',
    'connector',
    'strap',
    'tray support',
    'pull point',
    'junction box',
    'pedestal',
    'charging module',
    'retractor',
    'cord',
  ].map((item, place) => [item, place]),
);

const WASTE: Readonly<Record<string, 'conductor' | 'raceway'>> = {
  'feeder conductor': 'conductor',
  conductor: 'conductor',
  'grounding conductor': 'conductor',
  'pilot conductor': 'conductor',
  raceway: 'raceway',
};

/** Takeoff rows of sums: waste added to what is cut from stock, raceways in sticks besides, in an estimator's order. */
export function rowsOf(sums: readonly Sum[], rules: Rules): readonly TakeoffRow[] {
  const rows: TakeoffRow[] = [];
  for (const sum of sums) {
    const { kind, net } = sum;
    const wasted = WASTE[kind.item];
    const waste = wasted === undefined ? 0 : rules.waste[wasted];
    const basis = wasted === undefined ? kind.basis : `${kind.basis}; plus ${percent(waste)} waste`;
    rows.push(rowOf(sum, kind, net * (1 + waste), basis));
    if (kind.item === 'raceway' && !kind.spec.startsWith('LFMC')) {
      const sticks = Math.ceil((net * (1 + waste)) / STICK - 1e-9);
      const name = { item: 'raceway stick', spec: `${kind.spec}, ${STICK} ft`, unit: 'each' };
      rows.push(rowOf(sum, name, sticks, `length with waste in ${STICK} ft lengths, rounded up`));
    }
  }
  return rows.sort(
    (a, b) => (ORDER.get(a.item) ?? ORDER.size) - (ORDER.get(b.item) ?? ORDER.size) || collator.compare(a.spec, b.spec),
  );
}

const collator = new Intl.Collator('en', { numeric: true });

const percent = (share: number): string => `${Number((100 * share).toPrecision(6))}%`;

/** What a row is made of is gathered when it is asked for: a large lot has many parts, and few are opened. */
function rowOf(
  sum: Sum,
  { item, spec, unit }: Pick<TakeoffRow, 'item' | 'spec' | 'unit'>,
  quantity: number,
  basis: string,
): TakeoffRow {
  let parts: readonly Part[] | undefined;
  let of: readonly string[] | undefined;
  return {
    item,
    spec,
    quantity,
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
