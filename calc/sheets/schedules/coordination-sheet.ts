import type { Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import { coordinationRows } from '../../supply/study/coordination-rows.ts';
import { treeOf } from '../../supply/tree/supply-lines.ts';
import { tablesOf } from '../../tables/editions.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import type { Cell } from '../csv.ts';

/** Devices in series, pair by pair: what a study of coordination starts from. Nothing here compares curves. */
export function coordinationSheet(site: Site, plan: Plan): readonly (readonly Cell[])[] {
  const rows = coordinationRows(treeOf(site), plan.devices, plan.supply.equipment, tablesOf(site.rules));
  const head = [
    'device ahead',
    'in',
    'ahead (A)',
    'poles ahead',
    'transformer between',
    'device',
    'in',
    'number',
    'rating (A)',
    'poles',
    'rating ahead over rating',
    'most fault current at the device (A)',
    'selectivity asked for',
  ];
  return [
    head,
    ...rows.map(({ ahead, device, of, across, times, faultAmps, asked }): Cell[] => [
      ahead.of,
      ahead.at,
      ahead.amps,
      ahead.poles,
      across,
      of.length === 1 ? device.of : `${of[0]} to ${of.at(-1)}`,
      device.at,
      of.length,
      device.amps,
      device.poles,
      times === null ? null : Number(times.toFixed(2)),
      faultAmps === null ? null : Math.round(faultAmps),
      asked,
    ]),
    [],
    ['Curves and settings of the devices are those of the equipment chosen: selectivity is not worked here.'],
    [CAUTIONS],
  ];
}
