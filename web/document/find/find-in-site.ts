import type { Charger, Drop, Stall } from '../../../routing/site/site.ts';
import { findById } from './find-by.ts';

export const findCharger = findById<Charger>();
export const findDrop = findById<Drop>();
export const findStall = findById<Stall>();
