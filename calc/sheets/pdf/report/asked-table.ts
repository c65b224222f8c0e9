import type { Site } from '../../../../routing/site/site.ts';
import { counted } from '../../../../routing/words/counted.ts';
import type { Plan } from '../../../plan/plan-shape.ts';
import { seriesLabel } from '../../../supply/fault/fault-labels.ts';
import { disconnectNeeds } from '../../../supply/panels/charger-disconnects.ts';
import { treeOf } from '../../../supply/tree/supply-lines.ts';
import { tablesOf } from '../../../tables/editions.ts';
import { cited } from '../../../tables/sections.ts';
import type { Table } from '../kit/tables/table.ts';

type Row = readonly [of: string, what: string, touches: string, by: string];

/** What no drawing decides: questions to the authority, and what listing and marking of the equipment have to show. */
export function askedTable(site: Site, plan: Plan, width: number): Table {
  return {
    short: 'asked',
    title: 'Asked of the authority and of the equipment',
    width,
    lead: ['Nothing here is checked: each is to be answered by who is asked, and shown where it is wanted.'],
    columns: [
      { head: 'Of', most: 16 },
      { head: 'What', most: 76 },
      { head: 'Touches here', most: 40 },
      { head: 'By', most: 26 },
    ],
    rows: askedRows(site, plan).map((row) => [...row]),
  };
}

/** The rows by themselves; those that touch nothing of the site are left out. */
export function askedRows(site: Site, plan: Plan): readonly Row[] {
  const { chargers, equipment, rules } = site;
  if (chargers.length + equipment.length === 0) return [];
  const tables = tablesOf(rules);
  const boards = equipment.filter(({ kind }) => kind !== 'source' && kind !== 'transformer');
  const names = (list: readonly { readonly id: string }[]): string =>
    list.length > 6 ? `${list.length} pieces of equipment` : list.map(({ id }) => id).join(', ');
  const cords = counted(chargers.length, 'charger');
  const needs = disconnectNeeds(chargers, treeOf(site), tables);
  const away = needs.filter(({ own }) => own === null || own > 0);
  const managed = equipment.filter(({ managedAmps }) => managedAmps !== undefined);
  const series = equipment.filter(({ seriesAmps }) => seriesAmps !== undefined);
  const standing = plan.boxes.filter(({ under }) => under === null);
  const rows: readonly (Row | null)[] = [
    chargers.length === 0
      ? null
      : [
          'Authority',
          'Emergency shutoff of all chargers: whether one is wanted, as at a depot, where it stands and what it opens. The code of this edition asks for none; later ones may.',
          `${cords}, from ${names(equipment.filter(({ id }) => chargers.some(({ from }) => from === id)))}`,
          'local; no section',
        ],
    rules.boxLocation === 'wet' || standing.length === 0
      ? null
      : [
          'Authority',
          `Whether boxes under this roof stand in a ${rules.boxLocation} location, as they are taken.`,
          counted(standing.length, 'box', 'boxes'),
          cited(tables, 'wetBoxes'),
        ],
    managed.length === 0
      ? null
      : [
          'Authority',
          'Energy management: the listing, who may set it, and what keeps the ceiling when it loses contact.',
          managed.map(({ id, managedAmps }) => `${id} at ${managedAmps} A`).join(', '),
          cited(tables, 'managedLoad', 'energyManagement'),
        ],
    chargers.length === 0
      ? null
      : [
          'Equipment',
          'Protection of persons is part of the listed equipment. Where it is connected by cord and plug, its receptacle has a ground-fault circuit interrupter for personnel besides; those drawn are taken as wired in place.',
          cords,
          `${cited(tables, 'chargerPersons', 'chargerReceptacle')}, partly from memory`,
        ],
    chargers.length === 0
      ? null
      : [
          'Equipment',
          'Marked by its manufacturer as for charging electric vehicles, and whether ventilation is needed.',
          cords,
          `${cited(tables, 'chargerMarking')}, from memory`,
        ],
    away.length === 0
      ? null
      : [
          'Marking',
          'A plaque at each charger whose disconnect is not in sight, saying where it is.',
          away.length > 6 ? `${away.length} chargers` : away.map(({ charger }) => charger.id).join(', '),
          cited(tables, 'chargerDisconnect', 'lockable'),
        ],
    boards.length === 0
      ? null
      : [
          'Marking',
          'Each disconnect says what it is for; labels put on in the field last in their surroundings.',
          names(boards),
          `${cited(tables, 'disconnectMarking', 'markings')}, from memory`,
        ],
    boards.length === 0
      ? null
      : [
          'Marking',
          'Available fault current with the date of its calculation, as told with each board.',
          names(boards),
          cited(tables, 'availableFault'),
        ],
    ...series.map((one): Row => ['Marking', seriesLabel(one), one.id, cited(tables, 'seriesMarking', 'seriesRating')]),
  ];
  return rows.filter((row) => row !== null);
}
