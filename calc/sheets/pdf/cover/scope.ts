import type { Site } from '../../../../routing/site/site.ts';
import { counted } from '../../../../routing/words/counted.ts';
import type { Plan } from '../../../plan/plan-shape.ts';
import { tablesOf } from '../../../tables/editions.ts';
import { partsOf } from '../kit/purpose.ts';
import type { Table } from '../kit/tables/table.ts';

/** What the work is, from what is drawn, and what the site adds to it. */
export function scopeTable(site: Site, plan: Plan, width: number): Table {
  const lines = [...installed(site, plan), ...(site.drawings.scope ?? []), ...BY_OTHERS];
  return {
    short: 'scope',
    title: 'Scope of work',
    isPlain: true,
    width,
    columns: [{ head: '', align: 'right', least: 1.6 }, { head: '' }],
    rows: lines.map((line, i) => [`${i + 1}.`, line]),
  };
}

const BY_OTHERS = [
  'By others: utility work and metering, structure and its checks, paving and landscape, network service of the chargers.',
] as const;

function installed(site: Site, plan: Plan): readonly string[] {
  const overhead = site.drops.filter(({ mount = 'overhead' }) => mount === 'overhead').length;
  const pedestals = site.drops.filter(({ mount }) => mount === 'pedestal').length;
  const walls = site.drops.length - overhead - pedestals;
  const hung = [
    ...(overhead > 0 ? [counted(overhead, 'overhead drop')] : []),
    ...(pedestals > 0 ? [counted(pedestals, 'pedestal')] : []),
    ...(walls > 0 ? [counted(walls, 'wall box', 'wall boxes')] : []),
  ];
  const [news, old] = [
    site.feeders.filter(({ existing }) => existing !== true),
    site.feeders.filter(({ existing }) => existing === true),
  ];
  const gear = site.equipment.filter(({ kind }) => kind !== 'source');
  const names = (list: readonly { readonly id: string }[]): string =>
    list.length > 12 ? `${list[0]!.id} to ${list.at(-1)!.id}` : list.map(({ id }) => id).join(', ');
  const parts = partsOf(site.drawings);
  const scheduled = parts.has('circuits') || parts.has('conduits') ? ', as scheduled' : '';
  return [
    ...(hung.length > 0
      ? [
          `Furnish and install ${hung.join(', ')} with ${counted(site.chargers.length, 'charger outlet')}, with boxes, cords and their supports.`,
        ]
      : []),
    ...(plan.conduits.length > 0
      ? [`Branch raceways, boxes and conductors of ${counted(plan.circuits.length, 'circuit')}${scheduled}.`]
      : []),
    ...(gear.length > 0
      ? [`Distribution equipment${parts.has('one-line') ? ' as on the one-line' : ''}: ${names(gear)}.`]
      : []),
    ...(news.length > 0 ? [`New feeders ${names(news)} with their raceways and devices.`] : []),
    ...(old.length > 0 ? [`Existing feeders ${names(old)} remain; verify them before they are loaded.`] : []),
    ...(plan.conduits.some(({ path }) => path.some(([, , z]) => z < 0))
      ? ['Trenching, bedding, backfill and patching of what is underground, and what it takes to find what lies there.']
      : []),
    'Testing, labels and directories of what is installed.',
  ];
}

const LEFT_OPEN = '__________________';

/** The codes that govern: what the site names, and lines to fill in for what it does not. */
export function codesTable({ rules, project }: Site, width: number): Table {
  const accessible = {
    none: LEFT_OPEN,
    'access-board': 'proposed counts of the US Access Board',
    california: 'California',
  };
  return {
    short: 'codes',
    title: 'Codes',
    width,
    columns: [{ head: 'For' }, { head: 'Edition in force' }],
    rows: [
      ['Authority having jurisdiction', project.jurisdiction ?? LEFT_OPEN],
      ['Electrical', tablesOf(rules).edition],
      ['Accessible charging stalls', accessible[rules.accessibleBy]],
      ...['Building', 'Fire', 'Energy', 'Local amendments'].map((name) => [name, LEFT_OPEN]),
    ],
    foot: ['A line that is empty here was not given: fill it in before the set is issued.'],
  };
}
