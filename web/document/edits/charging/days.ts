import type { ChargingDay, SiteFile } from '../../../../routing/site/site.ts';
import type { Edit } from '../../change/edit.ts';
import { setField } from '../set.ts';

/** Adds a day of charging. */
export const addDay = (file: SiteFile, day: ChargingDay): Edit =>
  setDays(file, `Add the day ${day.id}`, [...(file.days ?? []), day]);

/** A day in the place of the one with its id. */
export const changeDay = (file: SiteFile, day: ChargingDay): Edit =>
  setDays(
    file,
    `Change the day ${day.id}`,
    (file.days ?? []).map((one) => (one.id === day.id ? day : one)),
  );

/** Takes a day away; with the last the field goes. */
export const removeDay = (file: SiteFile, id: string): Edit =>
  setDays(
    file,
    `Delete the day ${id}`,
    (file.days ?? []).filter((one) => one.id !== id),
  );

const setDays = (file: SiteFile, name: string, days: readonly ChargingDay[]): Edit =>
  setField(file, name, 'days', days.length > 0 ? (days as NonNullable<SiteFile['days']>) : undefined);
