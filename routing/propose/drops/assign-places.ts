/**
 * A place of its own for each of some sets, from the places that each may have (best first), so that as many sets as can
 * be get one: augmenting paths (Kuhn 1955). -1 where a set gets none.
 */
export function assignPlaces(choices: readonly (readonly number[])[]): number[] {
  const holder = new Map<number, number>();
  const place = choices.map(() => -1);
  const seek = (set: number, tried: Set<number>): boolean => {
    const free = choices[set]!.find((p) => !tried.has(p) && !holder.has(p));
    if (free !== undefined) {
      holder.set(free, set);
      place[set] = free;
      return true;
    }
    for (const p of choices[set]!) {
      if (tried.has(p)) continue;
      tried.add(p);
      if (seek(holder.get(p)!, tried)) {
        holder.set(p, set);
        place[set] = p;
        return true;
      }
    }
    return false;
  };
  choices.forEach((_, set) => {
    seek(set, new Set());
  });
  return place;
}
