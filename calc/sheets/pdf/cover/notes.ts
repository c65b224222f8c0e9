import type { SheetPart } from '../../../../routing/site/schema/vocabulary.ts';
import type { Table } from '../kit/tables/table.ts';
import type { Keynote } from '../kit/title/keynotes.ts';

/** Said of the whole set. */
const GENERAL = [
  'Drawn from the file named in the title block. That file governs where a print differs from it; a newer file makes a new set.',
  'Written dimensions govern; do not scale. Lengths are to the nearest 1/16 in, or millimeter on a metric site.',
  'Run lengths are developed: along the raceway with its risers, and the stubs at either end. Conductor lengths add what the rules of the site allow at the panel and at the box.',
  'Thin grey is existing work and what others build. Full ink is what is installed. Color shows the lines of a circuit, in the trade’s colors for its voltage, and nothing else.',
  'Volts and amps are worked with every charger at once, at its rating or as far as load management lets it.',
  'Sizes and fills come from the tables of the code edition shown. Local amendments, listings and the instructions of the equipment rule over them.',
  'Boxes and fittings outdoors are listed for wet places, and those of tubing are raintight.',
  'Setting out is from gridlines, to the middle of boxes and retractors. Verify columns, stripes and steel in the field before anything is fixed.',
];

/** What can hurt people or stop the work, for whoever reads the set. */
const CAUTION_NOTES = [
  'A planning aid. The authority having jurisdiction and licensed professionals decide what is built; nothing here is a statement of compliance. Approval of plans is not leave to energise.',
  'Electrical work is for qualified persons. De-energise, lock out, tag, and test before touching.',
  'Structure is by others: the canopy’s engineer checks every hung load. No primary steel is drilled, cut or welded without that engineer’s word.',
  'Service and utility work is arranged with the utility by others.',
  'Call 811 before digging. Private lines are not marked by it: find them first.',
  'Lifts: trained operators and a spotter. Stay 10 ft away from overhead lines to 50 kV, farther above that.',
  'Keep the working space in front of equipment clear, of parked cars too.',
  'Plan traffic and walking ways for the time of the work; keep accessible stalls and their way usable or replace them.',
  'Ask the fire official about canopies and cords over aisles and fire lanes.',
];

/** The findings stand with the basis of design: without it the words do not send there. */
const cordsOut = (parts: ReadonlySet<SheetPart>): string =>
  parts.has('basis')
    ? 'A cord that is out hangs lower than when it is stowed: findings say where it hangs under the headroom of a walk.'
    : 'A cord that is out hangs lower than when it is stowed: mind the headroom of walks under it.';

const numbered = (title: string, short: string, lines: readonly string[], width: number): Table => ({
  short,
  title,
  isPlain: true,
  width,
  columns: [{ head: '', align: 'right', least: 1.6 }, { head: '' }],
  rows: lines.map((line, i) => [`${i + 1}.`, line]),
});

export const generalNotes = (width: number, more: readonly string[]): Table =>
  numbered('General notes', 'notes', [...GENERAL, ...more], width);

export const cautionNotes = (width: number, parts: ReadonlySet<SheetPart>): Table =>
  numbered('Cautions', 'cautions', [...CAUTION_NOTES, cordsOut(parts)], width);

/** All keynotes of the plans, by their numbers. */
export const keynoteList = (keynotes: readonly Keynote[], width: number): Table => ({
  short: 'keynotes',
  title: 'Keynotes of the plans',
  isPlain: true,
  isWhole: true,
  width,
  columns: [{ head: '', align: 'right', least: 1.6 }, { head: '' }],
  rows: keynotes.map(({ number, says }) => [`${number}.`, says]),
});
