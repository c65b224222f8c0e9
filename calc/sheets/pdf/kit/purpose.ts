import { type SetPurpose, SHEET_PARTS, type SheetPart } from '../../../../routing/site/schema/vocabulary.ts';
import type { Drawings } from '../../../../routing/site/site.ts';

const PERMIT: readonly SheetPart[] = [
  'basis',
  'legend',
  'plan',
  'enlarged',
  'sections',
  'details',
  'one-line',
  'loads',
  'circuits',
  'panels',
  'feeders',
  'conduits',
  'accessible',
];

/**
 * What is in a set of each purpose. Common practice, no source: who reviews a permit set has no use for quantities and
 * setting-out; who bids has; who builds sets out and hangs; a record has what stands, and what was measured.
 */
export const PURPOSE_PARTS: Readonly<Record<SetPurpose, readonly SheetPart[]>> = {
  permit: PERMIT,
  bid: [...PERMIT, 'strips', 'setting-out', 'takeoff', 'raised'],
  construction: [...PERMIT, 'strips', 'setting-out', 'steel', 'raised'],
  'as-built': [
    'legend',
    'plan',
    'enlarged',
    'strips',
    'one-line',
    'circuits',
    'panels',
    'feeders',
    'conduits',
    'setting-out',
    'checklist',
    'open-items',
    'photos',
  ],
};

/** Sheets of the work, which a set of the design has only where they are chosen. */
export const WORK_PARTS: readonly SheetPart[] = ['checklist', 'open-items', 'photos'];
/** What a set without a purpose has. */
export const USUAL_PARTS: readonly SheetPart[] = SHEET_PARTS.filter((part) => !WORK_PARTS.includes(part));

/** What a set has: what was chosen, else what its purpose has, else everything of the design. */
export const partsOf = ({ sheets, purpose }: Drawings): ReadonlySet<SheetPart> =>
  new Set(sheets ?? (purpose === undefined ? USUAL_PARTS : PURPOSE_PARTS[purpose]));

interface PurposeWords {
  /** As a cover has it. */
  readonly title: string;
  /** Over the room for a seal: what the sheet may be used for. */
  readonly stamp: readonly [string, string];
}

const UNSTAMPED = ['NOT FOR CONSTRUCTION', 'until reviewed and stamped'] as const;

export const PURPOSE_WORDS: Readonly<Record<SetPurpose, PurposeWords>> = {
  permit: { title: 'Permit set', stamp: UNSTAMPED },
  bid: { title: 'Bid set', stamp: UNSTAMPED },
  construction: { title: 'Construction set', stamp: UNSTAMPED },
  'as-built': { title: 'As-built record', stamp: ['RECORD OF WORK', 'as it was measured and noted'] },
};

/** The words of a set that has no purpose yet. */
export const stampOf = ({ purpose }: Drawings): readonly [string, string] =>
  purpose === undefined ? UNSTAMPED : PURPOSE_WORDS[purpose].stamp;
