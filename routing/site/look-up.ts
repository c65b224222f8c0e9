import { kept } from '../kept/kept.ts';

type WithId = { readonly id: string };

const mapOf = kept((list: readonly WithId[]) => new Map(list.map((element) => [element.id, element])));

/** The elements of a list by their ids. The same list gives the same map, built once. */
export const byId = <T extends WithId>(list: readonly T[]): ReadonlyMap<string, T> =>
  mapOf(list) as ReadonlyMap<string, WithId> as ReadonlyMap<string, T>;
