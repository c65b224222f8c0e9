import type { Feeder, Rules } from '../../../routing/site/site.ts';
import type { Bonded } from '../../plan-file/supply.ts';
import { takeoffKind } from '../../prices/kind.ts';
import { bareSpec } from '../../prices/spec.ts';
import { jumperName } from '../../supply/bonding/bonded.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { type Tally, tallying } from '../tally.ts';

/**
 * Jumpers, conductors to electrodes and electrodes of new services, derived systems and structures.
 * What an existing feeder leads to is grounded already.
 */
export function bondingQuantities(
  bonded: readonly Bonded[],
  feeders: readonly Feeder[],
  { allowance }: Pick<Rules, 'allowance'>,
  { electrodeConductors: { rods, ringFt } }: Pick<CodeTables, 'electrodeConductors'>,
): Tally {
  const { add, tally } = tallying();
  const there = new Set(feeders.flatMap(({ to, existing }) => (existing === true ? [to] : [])));
  for (const { id, of, electrode, jumper, electrodeConductor } of bonded) {
    if (of !== 'derived system' && there.has(id)) continue;
    const each = (item: string, spec: string, basis: string, quantity = 1): void =>
      add(takeoffKind({ item, spec, unit: 'each', basis }), id, quantity);
    if (jumper !== undefined)
      each(
        jumperName(of),
        jumper.size === null ? 'busbar' : bareSpec(jumper.size, jumper.metal),
        'one where the neutral is bonded; part of much listed equipment',
      );
    if (electrodeConductor === undefined) continue;
    add(
      takeoffKind({
        item: 'electrode conductor',
        spec: bareSpec(electrodeConductor.size, electrodeConductor.metal),
        unit: 'ft',
        basis: 'the allowance from the equipment to its electrode',
      }),
      id,
      allowance.electrode,
    );
    each('electrode connection', 'clamp or weld', 'one at each electrode', electrode === 'rods' ? rods : 1);
    if (electrode === 'rods') each('ground rod', '5/8 in x 8 ft', `${rods} where one alone is not proved enough`, rods);
    if (electrode === 'ring')
      add(
        takeoffKind({
          item: 'ground ring',
          spec: bareSpec('2', 'copper'),
          unit: 'ft',
          basis: 'the least length of a ring',
        }),
        id,
        ringFt,
      );
  }
  return tally;
}
