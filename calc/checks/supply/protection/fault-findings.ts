import type { Finding } from '../../../../routing/site/rules/finding.ts';
import { caseWords, faultCases } from '../../../supply/fault/fault-case.ts';
import { mostAt } from '../../../supply/fault/fault-labels.ts';
import { ampsText, type SupplyFacts } from '../../../supply/supply-facts.ts';
import type { SupplyNode } from '../../../supply/tree/supply-tree.ts';
import { cited } from '../../../tables/sections.ts';
import { seriesFindings } from './series-findings.ts';

/** Fault current: what there is of it and where, boards without a figure, ratings that it is over. */
export const faultFindings = (facts: SupplyFacts): readonly Finding[] => [
  ...ratings(facts),
  ...seriesFindings(facts),
  ...available(facts),
  ...noFigure(facts),
  ...idle(facts),
];

const isBoard = ({ equipment: { kind } }: SupplyNode): boolean => kind !== 'source' && kind !== 'transformer';

const series = (amps: number | undefined): string =>
  amps === undefined ? '' : `, ${ampsText(amps)} with the device ahead`;

/** Interrupting ratings below what is available at their place; to be looked at where the supply gives no figure. */
function ratings({ tree, faults, tables }: SupplyFacts): Finding[] {
  return tree.nodes.flatMap((node, place): Finding[] => {
    const { id, interruptingAmps, seriesAmps } = node.equipment;
    const fault = faults[place]?.amps ?? null;
    if (interruptingAmps === undefined || fault === null) return [];
    const amps = mostAt(fault, isBoard(node));
    if (amps <= Math.max(interruptingAmps, seriesAmps ?? 0) * (1 + 1e-9)) return [];
    const toNeutral = isBoard(node) && (fault.lineToNeutral ?? 0) > fault.most ? ' line to neutral' : '';
    const cure = 'A higher rating, a tested series combination, or more impedance ahead of it.';
    const says = fault.isUnlimited
      ? `${id} may see up to ${ampsText(amps)} of fault current${toNeutral} with an unlimited supply, and interrupts ${ampsText(interruptingAmps)}${series(seriesAmps)}. The figure of the utility decides; ask for it. Where it is no less: ${cure[0]!.toLowerCase()}${cure.slice(1)}`
      : `${id} may see ${ampsText(amps)} of fault current${toNeutral} and interrupts ${ampsText(interruptingAmps)}${series(seriesAmps)}. ${cure}`;
    return [
      {
        severity: fault.isUnlimited ? 'warn' : 'fail',
        rule: 'interrupting-rating',
        about: [id],
        says,
        value: amps,
        limit: Math.max(interruptingAmps, seriesAmps ?? 0),
        unit: 'A',
        source: `${cited(tables, 'interruptingRating')}; I = V / |Z|`,
      },
    ];
  });
}

/** The most that is available behind the sources, where a board has no rating to hold it against. */
function available({ tree, faults, tables, rules }: SupplyFacts): Finding[] {
  const ampsAt = ({ equipment }: SupplyNode): number | undefined => faults[tree.placeOf.get(equipment.id)!]?.amps?.most;
  const known = tree.nodes.filter((node) => ampsAt(node) !== undefined && node.equipment.kind !== 'source');
  const unrated = known.filter((node) => isBoard(node) && node.equipment.interruptingAmps === undefined);
  if (known.length === 0 || (unrated.length === 0 && known.some(isBoard))) return [];
  const worst = known.reduce((most, node) => (ampsAt(node)! > ampsAt(most)! ? node : most));
  const { id } = worst.equipment;
  const { isUnlimited } = faults[tree.placeOf.get(id)!]!.most;
  const supply = isUnlimited ? 'with an unlimited supply, for no figure is given' : 'from the figure of the source';
  const none =
    unrated.length === 0 ? '' : `; none is entered for ${unrated.map(({ equipment }) => equipment.id).join(', ')}`;
  return [
    {
      severity: 'note',
      rule: 'fault-current',
      about: [id, ...known.map(({ equipment }) => equipment.id).filter((other) => other !== id)],
      says: `Available fault current is at most ${ampsText(ampsAt(worst)!)}, at ${id}, ${supply}, ${caseWords(faultCases(rules.fault).most)}, ${ampsOfMotors(
        known.map(({ equipment }) => faults[tree.placeOf.get(equipment.id)!]?.amps?.motorAmps ?? 0),
        rules.fault.motorTimes,
      )}. Interrupting ratings are to be at least that of each place${none}.`,
      value: ampsAt(worst)!,
      unit: 'A',
      source: `${cited(tables, 'interruptingRating', 'availableFault')}; R and X added up, I = V / |Z|`,
    },
  ];
}

/** What motors add beside that, in words. */
const ampsOfMotors = (each: readonly number[], times: number): string =>
  Math.max(...each) > 0
    ? `beside up to ${ampsText(Math.max(...each))} of motors at ${times} times their full load`
    : 'and no motors';

/** Sources that give no figure: what hangs on them is worked with no end to it, which is more than there is. */
function noFigure({ tree, faults, tables }: SupplyFacts): Finding[] {
  const without = tree.nodes.filter(
    ({ parent, primary, equipment }) => parent < 0 && primary === null && equipment.faultAmps === undefined,
  );
  if (without.length === 0) return [];
  const names = without.map(({ equipment }) => equipment.id);
  const roots = new Set(names);
  const unknown = tree.nodes.filter(
    ({ equipment: { id, kind } }, place) =>
      (faults[place] ?? null) === null && !roots.has(id) && kind !== 'transformer',
  );
  const boards = unknown.map(({ equipment }) => equipment.id);
  const so =
    boards.length === 0
      ? ''
      : ` No fault current is told for ${boards.join(', ')}, and no interrupting rating there is checked.`;
  return [
    {
      severity: 'note',
      rule: 'fault-current',
      about: [...names, ...boards],
      says: `No figure is given for the available fault current of the source (${names.join(', ')}). It is taken as unlimited, so that what is told behind it is more than there is.${so} Ask the utility for it.`,
      source: cited(tables, 'interruptingRating', 'availableFault'),
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
