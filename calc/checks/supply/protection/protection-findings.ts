import type { Finding } from '../../../../routing/site/rules/finding.ts';
import { ARC_WORDS } from '../../../../routing/site/schema/vocabulary.ts';
import type { Device } from '../../../plan-file/supply.ts';
import { servicesOf } from '../../../supply/service/services.ts';
import type { SupplyFacts } from '../../../supply/supply-facts.ts';
import type { SupplyNode, SupplyTree } from '../../../supply/tree/supply-tree.ts';
import { type System, systemName, toNeutral } from '../../../supply/tree/system.ts';
import type { CodeTables } from '../../../tables/code-tables.ts';
import { cited } from '../../../tables/sections.ts';

/** Devices so large that the code asks for ground-fault protection of equipment, or for a way to less arc energy. */
export const protectionFindings = (facts: SupplyFacts): readonly Finding[] => [
  ...groundFault(facts),
  ...arcEnergy(facts),
];

const deviceWords = ({ use, at, of }: Device): string =>
  use === 'main' ? `main of ${at}` : `device of ${of} at ${at}`;
const aboutOf = ({ at, of }: Device): readonly string[] => (at === of ? [at] : [of, at]);

/** The side of its equipment that a device stands on. */
function sideOf({ system, primary }: SupplyNode, { volts }: Device): System {
  return primary !== null && Math.abs(primary.volts - volts) < Math.abs(system.volts - volts) ? primary : system;
}

/** Whether a device is one that needs ground-fault protection of equipment. */
export function needsGroundFault(tables: CodeTables, tree: SupplyTree, device: Device): boolean {
  const node = tree.nodes[tree.placeOf.get(device.at) ?? -1];
  const { fromAmps, overVoltsToGround, toVolts } = tables.groundFault;
  if (node === undefined || device.amps === null || device.amps < fromAmps) return false;
  const side = sideOf(node, device);
  return side.neutral === 'wye' && toNeutral(side) > overVoltsToGround && side.volts <= toVolts;
}

/**
 * The first device on each way from a source or a transformer that needs it: what hangs behind one that has it needs none
 * of its own.
 */
function groundFault({ tree, devices, tables }: SupplyFacts): Finding[] {
  const large = devices.filter((device) => needsGroundFault(tables, tree, device));
  if (large.length === 0) return [];
  const services = new Set(
    tree.nodes.flatMap(({ parent }, root) =>
      parent < 0 ? servicesOf(tree, root).map((place) => tree.nodes[place]!.equipment.id) : [],
    ),
  );
  const { settingAmps, atAmps, seconds, fromAmps } = tables.groundFault;
  return large
    .filter((device) => device.groundFault !== true)
    .filter((device) => !large.some((other) => other !== device && isBehind(tree, device, other)))
    .map((device): Finding => {
      const node = tree.nodes[tree.placeOf.get(device.at)!]!;
      const isService = services.has(device.at) && device.use === 'main';
      return {
        severity: 'warn',
        rule: 'ground-fault',
        about: aboutOf(device),
        says: `The ${device.amps} A ${deviceWords(device)}, ${systemName(sideOf(node, device))}, has to have ground-fault protection of equipment: set no higher than ${settingAmps} A, no longer than ${seconds} s at ${atAmps} A and more, and tested when it is installed. Nothing entered says that it has it; what hangs behind it needs none of its own.`,
        value: device.amps!,
        limit: fromAmps,
        unit: 'A',
        source: cited(tables, isService ? 'groundFaultService' : 'groundFaultFeeder'),
      };
    });
}

/** Place of the equipment that a device stands before, -1 where it stands before none. */
const targetOf = ({ placeOf }: SupplyTree, { protects }: Device): number =>
  protects.reduce((found, id) => placeOf.get(id) ?? found, -1);

/** Place that the system which a device belongs to is derived from. */
function systemOf({ nodes, derivedFrom }: SupplyTree, target: number): number {
  const { primary, parent } = nodes[target]!;
  return derivedFrom[primary !== null && parent >= 0 ? parent : target]!;
}

/** True where `device` lies behind `other` in the same derived system. */
function isBehind(tree: SupplyTree, device: Device, other: Device): boolean {
  const [mine, theirs] = [targetOf(tree, device), targetOf(tree, other)];
  if (mine < 0 || theirs < 0 || systemOf(tree, mine) !== systemOf(tree, theirs)) return false;
  // At one piece of equipment, the head of its feeder stands before what it comes in to.
  if (mine === theirs) return other.at !== device.at && tree.placeOf.get(device.at) === mine;
  for (let at = tree.nodes[mine]!.parent; at >= 0; at = tree.nodes[at]!.parent) if (at === theirs) return true;
  return false;
}

/** Ways that work only where they act below the arcing current that is there. */
const BELOW_ARCING: ReadonlySet<string> = new Set(['instantaneous-trip', 'instantaneous-override']);

function arcEnergy({ devices, tables }: SupplyFacts): Finding[] {
  const { fromAmps } = tables.arcEnergy;
  return devices.flatMap((device): Finding[] => {
    const { amps } = device;
    if (amps === null || amps < fromAmps) return [];
    const rest = {
      rule: 'arc-energy',
      about: aboutOf(device),
      value: amps,
      limit: fromAmps,
      unit: 'A',
      source: tables.arcEnergy.source,
    } as const;
    if (device.arcEnergy === undefined)
      return [
        {
          severity: 'warn',
          ...rest,
          says: `The ${amps} A ${deviceWords(device)} has to have a documented way to less arc energy: zone interlocking, differential relaying, a maintenance switch, active mitigation, or an instantaneous trip below the arcing current that is there; tested when it is installed. Nothing entered says which. Fuses of that rating clear in 0.07 s at the arcing current, or have the same.`,
        },
      ];
    if (!BELOW_ARCING.has(device.arcEnergy)) return [];
    return [
      {
        severity: 'note',
        ...rest,
        says: `The ${amps} A ${deviceWords(device)} has ${ARC_WORDS[device.arcEnergy]} as its way to less arc energy, which counts only where it acts below the arcing current that is there: the study of arc energy gives that, and nothing here does.`,
      },
    ];
  });
}
