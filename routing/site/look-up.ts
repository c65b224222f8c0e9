import { kept } from '../kept/kept.ts';

type WithId = { readonly id: string };

const mapOf = kept((list: readonly WithId[]): ReadonlyMap<string, WithId> => {
  const elements = new Map<string, WithId>();
  for (let i = 0; i < list.length; i++) elements.set(list[i]!.id, list[i]!);
  return elements;
});

/** The elements of a list by their ids. The same list gives the same map, built once. */
export const byId = <T extends WithId>(list: readonly T[]): ReadonlyMap<string, T> =>
  mapOf(list) as ReadonlyMap<string, T>;
