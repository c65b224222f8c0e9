import type { Finding } from '../../../routing/site/finding.ts';
import { ampsText, type SupplyFacts } from '../../supply/supply-facts.ts';
import type { SupplyNode } from '../../supply/tree/supply-tree.ts';
import { cited } from '../../tables/sections.ts';

/** Fault current: what there is of it and where, boards without a figure, ratings that it is over. */
export const faultFindings = (facts: SupplyFacts): readonly Finding[] => [
  ...ratings(facts),
  ...available(facts),
  ...noFigure(facts),
  ...idle(facts),
];

/** Interrupting ratings below what is available at their place. */
function ratings({ tree, faults, tables }: SupplyFacts): Finding[] {
  return tree.nodes.flatMap(({ equipment: { id, interruptingAmps } }, place): Finding[] => {
    const amps = faults[place];
    if (interruptingAmps === undefined || amps === undefined || amps <= interruptingAmps * (1 + 1e-9)) return [];
    return [
      {
        severity: 'fail',
        rule: 'interrupting-rating',
        about: [id],
        says: `${id} may see ${ampsText(amps)} of fault current and interrupts ${ampsText(interruptingAmps)}. A higher rating, a tested series combination, or more impedance ahead of it.`,
        value: amps,
        limit: interruptingAmps,
        unit: 'A',
        source: `${cited(tables, 'interruptingRating')}, from memory; I = V / |Z|`,
      },
    ];
  });
}

const isBoard = ({ equipment: { kind } }: SupplyNode): boolean => kind !== 'source' && kind !== 'transformer';

/** The most that is available behind the sources, where a board has no rating to hold it against. */
function available({ tree, faults, tables }: SupplyFacts): Finding[] {
  const known = tree.nodes.filter((node, place) => faults[place] !== undefined && node.equipment.kind !== 'source');
  const unrated = known.filter((node) => isBoard(node) && node.equipment.interruptingAmps === undefined);
  if (known.length === 0 || (unrated.length === 0 && known.some(isBoard))) return [];
  const ampsAt = ({ equipment }: SupplyNode): number => faults[tree.placeOf.get(equipment.id)!]!;
  const worst = known.reduce((most, node) => (ampsAt(node) > ampsAt(most) ? node : most));
  const { id } = worst.equipment;
  const given = tree.nodes.some(({ equipment, parent }) => parent < 0 && equipment.faultAmps !== undefined);
  const supply = given ? 'from the figure of the source' : 'with an unlimited supply ahead of the transformer';
  const none =
    unrated.length === 0 ? '' : `; none is entered for ${unrated.map(({ equipment }) => equipment.id).join(', ')}`;
  return [
    {
      severity: 'note',
      rule: 'fault-current',
      about: [id, ...known.map(({ equipment }) => equipment.id).filter((other) => other !== id)],
      says: `Available fault current is at most ${ampsText(ampsAt(worst))}, at ${id}, ${supply} and no motors. Interrupting ratings are to be at least that of each place${none}.`,
      value: ampsAt(worst),
      unit: 'A',
      source: `${cited(tables, 'interruptingRating', 'availableFault')}, from memory; R and X added up, I = V / |Z|`,
    },
  ];
}

/** Sources that give no figure: what hangs on them has no fault current, or one with no end ahead of a transformer. */
function noFigure({ tree, faults, tables }: SupplyFacts): Finding[] {
  const without = tree.nodes.filter(
    ({ parent, primary, equipment }) => parent < 0 && primary === null && equipment.faultAmps === undefined,
  );
  if (without.length === 0) return [];
  const names = without.map(({ equipment }) => equipment.id);
  const roots = new Set(names);
  const unknown = tree.nodes.filter(
    ({ equipment: { id, kind } }, place) => faults[place] === undefined && !roots.has(id) && kind !== 'transformer',
  );
  const boards = unknown.map(({ equipment }) => equipment.id);
  const so =
    boards.length === 0
      ? ' What is told behind a transformer takes the supply ahead of it as unlimited.'
      : ` No fault current is told for ${boards.join(', ')}, and no interrupting rating there is checked.`;
  return [
    {
      severity: 'note',
      rule: 'fault-current',
      about: [...names, ...boards],
      says: `No figure is given for the available fault current of the source (${names.join(', ')}).${so} Ask the utility for it.`,
      source: `${cited(tables, 'interruptingRating', 'availableFault')}, from memory`,
    },
  ];
}

/** A figure entered where it does nothing. */
function idle({ tree }: SupplyFacts): Finding[] {
  return tree.nodes.flatMap(({ equipment: { id, faultAmps }, parent, primary }): Finding[] => {
    if (faultAmps === undefined || (parent < 0 && primary === null)) return [];
    const says = `${id} gives an available fault current and something feeds it: its own is worked out from what feeds it. Enter the figure at the source.`;
    return [{ severity: 'warn', rule: 'supply-data', about: [id], says, source: 'the site file' }];
  });
}
