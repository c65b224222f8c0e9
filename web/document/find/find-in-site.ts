import type { Charger, Drop, Stall } from '../../../routing/site/site.ts';
import { byId } from './find-by.ts';

export const findCharger = byId<Charger>();
export const findDrop = byId<Drop>();
export const findStall = byId<Stall>();
