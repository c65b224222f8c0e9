import { EQUIPMENT_WORDS } from '../../../routing/site/schema/vocabulary.ts';
import type { Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import type { Device } from '../../plan-file/supply.ts';
import { arcFlashInputs, GAP_WORDS, WORKING_SOURCE } from '../../supply/study/arc-flash-inputs.ts';
import { treeOf } from '../../supply/tree/supply-lines.ts';
import { tablesOf } from '../../tables/editions.ts';
import { cited } from '../../tables/sections.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import type { Cell } from '../csv.ts';

/** Where each board stands for a study of arc flash. No incident energy is worked. */
export function arcFlashSheet(site: Site, plan: Plan): readonly (readonly Cell[])[] {
  const tables = tablesOf(site.rules);
  const inputs = arcFlashInputs(treeOf(site), plan.devices, plan.supply.equipment, tables);
  const head = [
    'equipment',
    'kind',
    'volts',
    'most bolted fault (A)',
    'least bolted fault (A)',
    'X/R',
    'supply',
    'device ahead',
    'ahead (A)',
    'own main (A)',
    'working distance (in)',
    'electrode gap',
    'label',
  ];
  return [
    head,
    ...inputs.map(
      ({ id, kind, system, mostAmps, leastAmps, xr, isUnlimited, ahead, main, workingInches, label }): Cell[] => [
        id,
        EQUIPMENT_WORDS[kind],
        system,
        whole(mostAmps),
        whole(leastAmps),
        xr === null ? null : Number(xr.toFixed(2)),
        mostAmps === null ? 'no figure' : isUnlimited ? 'taken as unlimited' : 'by the figure of the source',
        ahead === null ? 'none drawn' : deviceWords(ahead),
        ahead?.amps ?? null,
        main?.amps ?? null,
        workingInches,
        GAP_WORDS,
        label,
      ],
    ),
    [],
    [
      `Labels: ${cited(tables, 'arcFlash')}. Working distances: ${WORKING_SOURCE}. Incident energy and boundaries: by the study.`,
    ],
    [CAUTIONS],
  ];
}

const whole = (amps: number | null): number | null => (amps === null ? null : Math.round(amps));
const deviceWords = ({ of, at }: Device): string => `${of} at ${at}`;
