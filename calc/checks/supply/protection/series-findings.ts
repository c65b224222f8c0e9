import type { Finding } from '../../../../routing/site/rules/finding.ts';
import { leastAmps, protectorsOf } from '../../../supply/devices/protecting.ts';
import { mostAt, restsOnSeries, seriesLabel } from '../../../supply/fault/fault-labels.ts';
import { motorAmps } from '../../../supply/fault/motor-fault.ts';
import { ampsText, type SupplyFacts } from '../../../supply/supply-facts.ts';
import { cited } from '../../../tables/sections.ts';

/**
 * Boards that rest on a series rating: what they are marked with, what the combination is, and what has to be shown of it.
 * One without the device that it was tested with, or with none ahead, is to be looked at.
 */
export function seriesFindings({ tree, faults, devices, loads, tables }: SupplyFacts): readonly Finding[] {
  return tree.nodes.flatMap(({ equipment, parent }, place): Finding[] => {
    const { id, seriesAmps, seriesWith } = equipment;
    const fault = faults[place]?.amps ?? null;
    if (seriesAmps === undefined || fault === null) return [];
    const amps = mostAt(fault, true);
    if (!restsOnSeries(equipment, amps)) return [];
    const ahead = (protectorsOf(devices).get(id) ?? []).filter(({ at }) => at !== id);
    const above = parent < 0 ? [] : (protectorsOf(devices).get(tree.nodes[parent]!.equipment.id) ?? []);
    const [device] = ahead.length > 0 ? ahead : above;
    const rating = leastAmps(device === undefined ? [] : [device]);
    const drawn =
      device === undefined
        ? ' No device is drawn ahead of it.'
        : ` Ahead of it stands ${rating === null ? 'a device without a rating' : `the ${rating} A of ${device.of}`} at ${device.at}: it has to be that one.`;
    const feeds = parent < 0 ? id : tree.nodes[parent]!.equipment.id;
    const motors = loads
      .filter(({ motor, from }) => motor === true && (from === id || from === feeds))
      .reduce((sum, load) => sum + motorAmps(load), 0);
    const motorLimit = (tables.seriesMotors.percent / 100) * (equipment.interruptingAmps ?? 0);
    if (motors > motorLimit * (1 + 1e-9))
      return [
        {
          severity: 'fail',
          rule: 'interrupting-rating',
          about: [id],
          says: `${id} rests on a series rating, and motors of ${ampsText(motors)} at full load hang between its devices or on it: they may take ${tables.seriesMotors.percent}% of the lower rating, ${ampsText(motorLimit)}, at most. A rating of its own.`,
          value: motors,
          limit: motorLimit,
          unit: 'A',
          source: cited(tables, 'seriesMotors'),
        },
      ];
    const named = seriesWith === undefined ? '; the device that it was tested with is not entered' : `: ${seriesWith}`;
    return [
      {
        severity: seriesWith === undefined || device === undefined ? 'warn' : 'note',
        rule: 'interrupting-rating',
        about: [id],
        says: `${id} may see ${ampsText(amps)} of fault current and rests on a series rating of ${ampsText(seriesAmps)} with the device ahead${named}.${drawn} The combination is a tested one, marked on the equipment; motors between the two may take ${tables.seriesMotors.percent}% of the lower rating at most (${cited(tables, 'seriesMotors')}). Mark it: "${seriesLabel(equipment)}"`,
        value: amps,
        limit: seriesAmps,
        unit: 'A',
        source: cited(tables, 'seriesMarking', 'seriesRating'),
      },
    ];
  });
}
