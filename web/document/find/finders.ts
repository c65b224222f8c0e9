import type { Conduit } from '../../../calc/plan-file/branches.ts';
import type { Run } from '../../../routing/network/run.ts';
import type { Charger, Drop, Stall } from '../../../routing/site/site.ts';
import { findById, finder } from './find-by.ts';

export const findCharger = findById<Charger>();
export const findDrop = findById<Drop>();
export const findStall = findById<Stall>();

/** The run of a charger. */
export const runOf = finder<Run>(({ charger }) => charger);
export const conduitOf = findById<Conduit>();
