import type { Conduit } from '../../../calc/plan-file/branches.ts';
import type { Run } from '../../../routing/network/run.ts';
import { findById, finder } from './find-by.ts';

/** The run of a charger. */
export const runOf = finder<Run>(({ charger }) => charger);
export const conduitOf = findById<Conduit>();
