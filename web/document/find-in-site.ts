import type { Charger, Drop, Equipment, Raceway, Stall } from '../../routing/site/site.ts';
import { byId } from './find-by.ts';

export const findCharger = byId<Charger>();
export const findDrop = byId<Drop>();
export const findEquipment = byId<Equipment>();
export const findRaceway = byId<Raceway>();
export const findStall = byId<Stall>();
