import * as v from 'valibot';
import { boxVolume, type Counted, isBoxConductor } from '../../../branches/boxes/box-volume.ts';
import { compareSizes } from '../../../tables/sizes.ts';
import { conductorsOfSize, TABLES, wholeNumber } from '../fields.ts';
import { answer, kind } from '../kind.ts';

/** How many, taken at the largest conductor in the box; or how many of each size. */
const some = v.union([wholeNumber, conductorsOfSize, v.array(conductorsOfSize)]);

const schema = v.strictObject({
  conductors: v.pipe(v.array(conductorsOfSize), v.minLength(1)),
  devices: v.optional(some, 0),
  clamps: v.optional(v.union([v.boolean(), wholeNumber]), false),
  groundings: v.optional(some, 0),
});

export const boxKind = kind(schema, ({ conductors, devices, clamps, groundings }, tell) => {
  const largest = conductors.map(({ size }) => size).reduce((a, b) => (compareSizes(a, b) < 0 ? b : a));
  const listOf = (given: v.InferOutput<typeof some>): readonly Counted[] => {
    if (typeof given === 'number') return given > 0 ? [{ size: largest, count: given }] : [];
    return Array.isArray(given) ? given : [given];
  };
  const lists = { conductors, devices: listOf(devices), groundings: listOf(groundings) };
  const errors = Object.entries(lists).flatMap(([name, list]) =>
    list.flatMap(({ size }, at) =>
      isBoxConductor(TABLES, size)
        ? []
        : [{ place: `${name}[${at}].size`, says: `${TABLES.boxAllowances.source} ends at 6 AWG; see pull-box` }],
    ),
  );
  return errors.length > 0
    ? { ok: false, errors }
    : answer(boxVolume(TABLES, { ...lists, clamps: Number(clamps) > 0 }, tell));
});
