/**
 * Finds an element of a list by one of its words, trying first the place where it stood before: of lists that follow
 * one another in a drag nearly all have it there, and going through thousands each time takes longer than drawing them.
 */
export function finder<Element>(
  wordOf: (element: Element) => string,
): (list: readonly Element[], word: string | undefined) => Element | undefined {
  const stood = new Map<string, number>();
  return (list, word) => {
    if (word === undefined) return undefined;
    const there = list[stood.get(word) ?? -1];
    if (there !== undefined && wordOf(there) === word) return there;
    const at = list.findIndex((element) => wordOf(element) === word);
    if (at >= 0) stood.set(word, at);
    return list[at];
  };
}

/** By id. */
export const findById = <Element extends { readonly id: string }>(): ((
  list: readonly Element[],
  id: string | undefined,
) => Element | undefined) => finder((element: Element) => element.id);
