import type { Finding } from '../../../../routing/site/rules/finding.ts';
import { bondedOf, jumperName } from '../../../supply/bonding/bonded.ts';
import { startsWithout } from '../../../supply/devices/device-place.ts';
import type { SupplyFacts } from '../../../supply/supply-facts.ts';
import { systemName } from '../../../supply/tree/system.ts';
import { cited } from '../../../tables/sections.ts';

/** Bonding and grounding: what is not given, and what no single conductor will do for. */
export const bondingFindings = (facts: SupplyFacts): readonly Finding[] => [
  ...atPlaces(facts),
  ...services(facts),
  ...floating(facts),
];

const SECTION = {
  service: 'serviceGrounding',
  'derived system': 'derivedSystem',
  structure: 'structureElectrode',
} as const;

function atPlaces({ tree, tables }: SupplyFacts): Finding[] {
  return bondedOf(tree, tables).flatMap(({ id, of, electrode, conductor, jumper, electrodeConductor }): Finding[] => {
    const { system } = tree.nodes[tree.placeOf.get(id)!]!;
    const say = (severity: Finding['severity'], says: string): Finding => ({
      severity,
      rule: 'bonding',
      about: [id],
      says,
      source: `${cited(tables, SECTION[of])}, from memory; ${tables.bondingJumpers.source}`,
    });
    const what =
      of === 'derived system' ? `${id} makes a system of its own, ${systemName(system)}` : `${id} is service equipment`;
    if (conductor === undefined)
      return [
        say(
          'warn',
          `${of === 'structure' ? `${id} has an electrode` : what}, and no conductor is known to size its bonding jumper and electrode conductor by. Draw the feeder that leaves it, with a size of the tables.`,
        ),
      ];
    return [
      ...(electrode === undefined
        ? [
            say(
              'note',
              `${what}: what it is grounded to is not given. Its electrode conductor is sized as to structural steel or a water pipe, ${electrodeConductor!.size} ${electrodeConductor!.metal}, which is the most; enter the electrode.`,
            ),
          ]
        : []),
      ...(jumper !== undefined && jumper.size === null
        ? [
            say(
              'warn',
              `The ${jumperName(of)} of ${id} is to have ${Math.round(jumper.mils ?? 0)} circular mils, more than any conductor of the tables. A busbar of the equipment, by its listing.`,
            ),
          ]
        : []),
    ];
  });
}

/** A source whose new conductors, with no device at their start, lead to no service equipment. */
function services({ tree, tables }: SupplyFacts): Finding[] {
  return tree.nodes.flatMap(({ equipment, parent, primary, feeder }): Finding[] => {
    const above = parent < 0 ? undefined : tree.nodes[parent]!.equipment;
    if (above?.kind !== 'source' || feeder === null || feeder.existing === true || primary !== null) return [];
    if (equipment.kind === 'service' || equipment.electrode !== undefined || !startsWithout(feeder, above)) return [];
    return [
      {
        severity: 'note',
        rule: 'bonding',
        about: [equipment.id, feeder.id, above.id],
        says: `${feeder.id} leads from ${above.id} to ${equipment.id} with no service equipment between: no main bonding jumper and no electrode conductor is sized. Draw the service equipment, enter the electrode of ${equipment.id} where it is that, or say that the device of ${feeder.id} stands at ${above.id} where that is a board of the building.`,
        source: `${cited(tables, 'serviceGrounding')}, from memory`,
      },
    ];
  });
}

/** A transformer whose secondary has no neutral: which conductor is grounded, if any, is not drawn. */
function floating({ tree, tables }: SupplyFacts): Finding[] {
  return tree.nodes.flatMap(({ equipment: { id }, primary, system }): Finding[] => {
    if (primary === null || system.neutral !== null) return [];
    const says = `${id} makes a system of its own, ${systemName(system)}, without a neutral: whether one of its lines is grounded is not said, and no system bonding jumper is sized. A line that is grounded is bonded like a neutral; a system that is not asks for ground detectors.`;
    return [
      {
        severity: 'note',
        rule: 'bonding',
        about: [id],
        says,
        source: `${cited(tables, 'derivedSystem')}, from memory`,
      },
    ];
  });
}
