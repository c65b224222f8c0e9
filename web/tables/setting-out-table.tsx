import type { Circuit } from '../../calc/plan-file/branches.ts';
import { addTo } from '../../routing/lists/grouping.ts';
import { printLength } from '../../routing/site/numbers/feet-inches.ts';
import { awayFromDrawing } from '../../routing/site/place/as-built.ts';
import { setOutPlace } from '../../routing/site/place/grid-frame.ts';
import type { Charger, Drop, Gridline, Point2, Site } from '../../routing/site/site.ts';
import { useDocument, useDocumentStore } from '../document/use-document.tsx';
import { usePageActions } from '../page-state/page-actions.ts';
import { type ListColumn, WindowedTable } from '../parts/windowed-table.tsx';
import { nearestInch } from '../words/lengths.ts';
import { setOutWords } from '../words/setting-out.ts';

interface SettingOut {
  readonly drop: Drop;
  readonly chargers: readonly Charger[];
  readonly circuits: readonly Circuit[];
  readonly checked: string;
}

/** Where each drop is hung, as a crew measures it: from the gridlines, and up from grade. */
export function SettingOutTable() {
  const document = useDocumentStore();
  const { reveal } = usePageActions();
  const site = useDocument((state) => state.site);
  const circuits = useDocument((state) => state.plan.circuits);
  const selection = useDocument((state) => state.selection);
  const chosen = new Set(selection.filter(({ list }) => list === 'drops').map(({ id }) => id));
  return (
    <WindowedTable
      name="Setting out"
      rows={rowsOf(site, circuits)}
      columns={columnsFor(site)}
      keyOf={({ drop }) => drop.id}
      isChosen={({ drop }) => chosen.has(drop.id)}
      onChoose={({ drop }, adds) => {
        if (adds) document.getState().select([{ list: 'drops', id: drop.id }], 'toggle');
        else reveal([{ list: 'drops', id: drop.id }]);
      }}
    />
  );
}

function rowsOf(site: Site, circuits: readonly Circuit[]): readonly SettingOut[] {
  const at = new Map<string, Charger[]>();
  for (const charger of site.chargers) addTo(at, charger.drop, charger);
  const byCharger = new Map(circuits.map((circuit) => [circuit.charger, circuit]));
  return site.drops.map((drop) => {
    const chargers = at.get(drop.id) ?? [];
    return {
      drop,
      chargers,
      circuits: chargers.flatMap(({ id }) => byCharger.get(id) ?? []),
      checked: checkedWords(site, drop),
    };
  });
}

/** The day of a record and whose it is; how far off the drawing it was built, where that is worth telling. */
function checkedWords({ asBuilt, rules, units }: Site, drop: Drop): string {
  const found = asBuilt.get(drop.id);
  if (found?.checkedOn === undefined) return '';
  const away = awayFromDrawing(drop, found);
  const off = away > rules.builtTolerance ? `, ${nearestInch(away, units)} off` : '';
  return `${[found.checkedOn, found.checkedBy].filter(Boolean).join(' ')}${off}`;
}

function columnsFor(site: Site): readonly ListColumn<SettingOut>[] {
  const { units, gridlines } = site;
  const labels = new Map(site.stalls.map(({ id, label }) => [id, label ?? id]));
  const length = (feet: number): string => printLength(feet, units);
  const place = ({ box: [x, y] }: Drop): Point2 => setOutPlace(gridlines, [x, y]);
  const from = (lines: readonly Gridline[], value: number): string => setOutWords(lines, value, units);
  return [
    { head: 'drop', cell: ({ drop }) => drop.id, sort: ({ drop }) => drop.id },
    {
      head: 'stalls',
      cell: ({ chargers }) =>
        chargers.flatMap(({ stalls }) => stalls.map((id) => labels.get(id) ?? id)).join(', ') || '–',
    },
    { head: 'box along', cell: ({ drop }) => from(gridlines.x, place(drop)[0]), sort: ({ drop }) => place(drop)[0] },
    { head: 'box across', cell: ({ drop }) => from(gridlines.y, place(drop)[1]), sort: ({ drop }) => place(drop)[1] },
    { head: 'box up', numeric: true, cell: ({ drop }) => length(drop.box[2]), sort: ({ drop }) => drop.box[2] },
    {
      head: 'retractor up',
      numeric: true,
      cell: ({ drop }) => (drop.retractor ? length(drop.retractor[2]) : '–'),
      sort: ({ drop }) => drop.retractor?.[2] ?? 0,
    },
    { head: 'cord', numeric: true, cell: ({ drop }) => length(drop.cord), sort: ({ drop }) => drop.cord },
    {
      head: 'rests at',
      numeric: true,
      cell: ({ drop }) => (drop.restHeight === undefined ? '–' : length(drop.restHeight)),
    },
    {
      head: 'circuit',
      cell: ({ circuits }) =>
        circuits.map(({ from: panel, breakerAmps, phases }) => `${panel}, ${breakerAmps} A, ${phases}`).join('; ') ||
        '–',
    },
    {
      head: 'conduits',
      cell: ({ circuits }) => circuits.flatMap(({ conduits }) => conduits).join(' ') || '–',
    },
    { head: 'as built', cell: ({ checked }) => checked || <span className="quiet">not yet checked</span> },
  ];
}
