import { EQUIPMENT_WORDS } from '../../../../routing/site/schema/vocabulary.ts';
import type { Site } from '../../../../routing/site/site.ts';
import type { Plan } from '../../../plan/plan-shape.ts';
import type { Device } from '../../../plan-file/supply.ts';
import { arcFlashInputs, GAP_WORDS, WORKING_SOURCE } from '../../../supply/study/arc-flash-inputs.ts';
import { coordinationRows } from '../../../supply/study/coordination-rows.ts';
import { treeOf } from '../../../supply/tree/supply-lines.ts';
import { tablesOf } from '../../../tables/editions.ts';
import { cited } from '../../../tables/sections.ts';
import type { Table } from '../kit/tables/table.ts';
import { ampsFigure, figure, NONE } from '../schedules/figures.ts';

const amps = (of: number | null): string => (of === null ? NONE : ampsFigure(of));
const rated = ({ amps: rating, poles, of, at }: Device): string => `${of} at ${at}, ${amps(rating)} A ${poles}P`;

/** What the studies of coordination and of arc flash start from; neither is made here. */
export function studyTables(site: Site, plan: Plan, width: number): readonly Table[] {
  const tables = tablesOf(site.rules);
  const tree = treeOf(site);
  const supply = plan.supply.equipment;
  return [
    {
      short: 'coordination',
      title: 'Coordination inputs: devices in series',
      width,
      lead: [
        `Selectivity is not worked: it takes the curves and settings of the devices that are bought. None of what is drawn is of the systems that ${cited(tables, 'selective')} asks it of.`,
      ],
      columns: [
        { head: 'Device ahead', most: 30 },
        { head: 'Device', most: 30 },
        { head: 'Number', align: 'right' },
        { head: 'Between' },
        { head: 'Ahead over device', align: 'right' },
        { head: 'Most fault A', align: 'right' },
      ],
      rows: coordinationRows(tree, plan.devices, supply, tables).map(
        ({ ahead, device, of, across, times, faultAmps }) => [
          rated(ahead),
          of.length === 1
            ? rated(device)
            : `${of[0]} to ${of.at(-1)} at ${device.at}, ${amps(device.amps)} A ${device.poles}P`,
          String(of.length),
          across ?? '',
          times === null ? NONE : figure(times, 2),
          amps(faultAmps),
        ],
      ),
    },
    {
      short: 'arc flash',
      title: 'Arc-flash inputs',
      width,
      lead: [
        `Arc-flash study required; no incident energy is worked. Working distances: ${WORKING_SOURCE}. Electrode gaps: ${GAP_WORDS}. Labels: ${cited(tables, 'arcFlash')}.`,
      ],
      columns: [
        { head: 'Equipment', most: 26 },
        { head: 'Most A', align: 'right' },
        { head: 'Least A', align: 'right' },
        { head: 'Device ahead', most: 24 },
        { head: 'Own main A', align: 'right' },
        { head: 'Work at in', align: 'right' },
        { head: 'Label', most: 60 },
      ],
      rows: arcFlashInputs(tree, plan.devices, supply, tables).map(
        ({ id, kind, system, mostAmps, leastAmps, isUnlimited, ahead, main, workingInches, label }) => [
          `${id}, ${EQUIPMENT_WORDS[kind]}, ${system}`,
          `${amps(mostAmps)}${isUnlimited ? ', supply unlimited' : ''}`,
          amps(leastAmps),
          ahead === null ? 'none drawn' : rated(ahead),
          amps(main?.amps ?? null),
          String(workingInches),
          label,
        ],
      ),
    },
  ];
}
