import type { RecordPen } from '../../../web/document/edits/records/records.ts';

let count = 0;

/** A pen whose marks are numbered. */
export const testPen = (by = 'AB', on = '2026-05-01'): RecordPen => ({ by, on, newId: () => `m${++count}` });
