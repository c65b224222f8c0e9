import type { Finding } from '../../../../routing/site/rules/finding.ts';
import { counted } from '../../../../routing/words/counted.ts';
import { devicePlace } from '../../../supply/devices/device-place.ts';
import { leastAmps, protectorsOf } from '../../../supply/devices/protecting.ts';
import type { SupplyFacts } from '../../../supply/supply-facts.ts';
import { cited } from '../../../tables/sections.ts';

/** Devices that nobody drew, that are given twice, and that are taken to stand where they are needed. */
export const deviceFindings = (facts: SupplyFacts): readonly Finding[] => [
  ...straight(facts),
  ...missing(facts),
  ...assumed(facts),
  ...givenTwice(facts),
  ...unlikeAhead(facts),
  ...unrated(facts),
];

/** Chargers and loads that hang on a transformer with no board between. */
function straight({ devices, chargers, loads, tables }: SupplyFacts): Finding[] {
  return devices.flatMap(({ use, known, at }): Finding[] => {
    if (use !== 'secondary' || known !== 'missing') return [];
    const [own, others] = [chargers, loads].map((list) => list.filter(({ from }) => from === at).map(({ id }) => id));
    const what = [
      ...(own!.length === 0 ? [] : [counted(own!.length, 'charger')]),
      ...(others!.length === 0 ? [] : [counted(others!.length, 'load')]),
    ].join(' and ');
    return [
      {
        severity: 'fail',
        rule: 'secondary',
        about: [at, ...own!, ...others!],
        says: `${what} ${own!.length + others!.length === 1 ? 'hangs' : 'hang'} on transformer ${at} itself: no device and no busbar stands between. Its primary device may protect a two-wire or a delta-delta secondary only (${cited(tables, 'primaryAlone')}). A panel with a main behind ${at}.`,
        source: cited(tables, 'secondaries', 'panelSecondary'),
      },
    ];
  });
}

/** Boards that nothing is drawn ahead of, and no main in. */
function missing({ devices, tables }: SupplyFacts): Finding[] {
  const boards = devices.filter(({ use, known }) => use === 'main' && known === 'missing').map(({ at }) => at);
  if (boards.length === 0) return [];
  const [they, their] = boards.length === 1 ? ['it', 'its main'] : ['they', 'their mains'];
  return [
    {
      severity: 'note',
      rule: 'device-missing',
      about: boards,
      says: `No device is drawn that protects ${boards.join(', ')}: ${they} ${boards.length === 1 ? 'has' : 'have'} no main and no feeder. Enter ${their}, or the feeder that comes in.`,
      source: cited(tables, 'panelDevice'),
    },
  ];
}

/** Boards behind a transformer whose main is not entered: the device of the feeder is taken for it. */
function assumed({ devices, tree, tables }: SupplyFacts): Finding[] {
  return tree.nodes.flatMap(({ feeder, parent, primary, equipment }): Finding[] => {
    if (feeder === null || primary !== null || tree.nodes[parent]!.primary === null) return [];
    const own = devices.find(({ id, known }) => id === `${feeder.id}.to` && known === 'assumed');
    if (own === undefined) return [];
    return [
      {
        severity: 'note',
        rule: 'secondary',
        about: [equipment.id, feeder.id],
        says: `A panel behind a transformer is protected on the secondary side, and ${equipment.id} has no main entered: the ${own.amps} A device of ${feeder.id} is taken to stand in it.`,
        source: cited(tables, 'panelSecondary', 'secondaries'),
      },
    ];
  });
}

/** A feeder that ends in its device and a main there of another rating. */
function givenTwice({ tree }: SupplyFacts): Finding[] {
  return tree.nodes.flatMap(({ feeder, parent, primary, equipment: { id, mainAmps } }): Finding[] => {
    if (feeder === null || primary !== null || mainAmps === undefined || mainAmps === feeder.breakerAmps) return [];
    if (devicePlace(feeder, tree.nodes[parent]!.equipment) !== 'to') return [];
    return [
      {
        severity: 'warn',
        rule: 'supply-data',
        about: [feeder.id, id],
        says: `Feeder ${feeder.id} ends in its device of ${feeder.breakerAmps} A and ${id} has a main of ${mainAmps} A: they are one device, and the main is taken. One rating for both, or the device where the feeder starts.`,
        source: 'ratings as entered',
      },
    ];
  });
}

/** A tap without a device whose rating is not that of the device ahead, by which its transformer is held. */
function unlikeAhead({ tree, devices }: SupplyFacts): Finding[] {
  return tree.nodes.flatMap(({ feeder, primary }): Finding[] => {
    if (feeder?.device !== 'none' || primary === null) return [];
    const ahead = leastAmps(protectorsOf(devices).get(feeder.from) ?? []);
    if (ahead === null || ahead === feeder.breakerAmps) return [];
    return [
      {
        severity: 'warn',
        rule: 'supply-data',
        about: [feeder.id, feeder.from],
        says: `Feeder ${feeder.id} has no device of its own and says ${feeder.breakerAmps} A; what protects ${feeder.from} is ${ahead} A, and that is the device ahead of the tap. Enter ${ahead} A, by which transformer ${feeder.to} is then held.`,
        value: feeder.breakerAmps,
        limit: ahead,
        unit: 'A',
        source: 'ratings as entered',
      },
    ];
  });
}

/** Disconnects of which nothing says how many amperes they are for. */
function unrated({ tree }: SupplyFacts): Finding[] {
  const ids = tree.nodes.flatMap(({ equipment: { id, kind, busAmps, mainAmps } }) =>
    kind === 'disconnect' && busAmps === undefined && mainAmps === undefined ? [id] : [],
  );
  if (ids.length === 0) return [];
  const [have, their] =
    ids.length === 1 ? ['has', 'its bus, and its main'] : ['have', 'their busbars, and their mains'];
  return [
    {
      severity: 'warn',
      rule: 'supply-data',
      about: ids,
      says: `${ids.join(', ')} ${have} no rating in amperes: nothing is held against it, and it is bought by its voltage alone. Enter ${their} where fused.`,
      source: 'ratings as entered',
    },
  ];
}
