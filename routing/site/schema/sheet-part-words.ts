import type { SheetPart } from './vocabulary.ts';

/** What each part of a drawing set is called. */
export const SHEET_PART_WORDS: Readonly<Record<SheetPart, string>> = {
  basis: 'basis of design and assumptions',
  legend: 'legend and abbreviations',
  plan: 'plan of the whole site',
  strips: 'run strips',
  sections: 'sections',
  enlarged: 'enlarged plans',
  details: 'details',
  'one-line': 'one-line',
  loads: 'load calculation',
  circuits: 'circuit schedule',
  panels: 'panel schedules',
  feeders: 'feeder schedule',
  conduits: 'conduit schedule',
  'setting-out': 'setting-out schedule',
  accessible: 'accessible stalls',
  takeoff: 'takeoff',
  steel: 'loads on the steel',
  days: 'charging days',
  raised: 'raised view',
  checklist: 'inspection checklist',
  'open-items': 'open items',
  photos: 'photos of the work',
};
