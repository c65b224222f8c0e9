/** Adds an item to the group of its key; the first of a key begins its group. */
export function addTo<K, V>(groups: Map<K, V[]>, key: K, item: V): void {
  const group = groups.get(key);
  if (group) group.push(item);
  else groups.set(key, [item]);
}
