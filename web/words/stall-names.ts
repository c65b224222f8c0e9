import { addTo } from '../../routing/lists/grouping.ts';
import type { Stall } from '../../routing/site/site.ts';

type Named = Pick<Stall, 'id' | 'label'>;

export type StallsRead =
  | { readonly ok: true; readonly ids: readonly string[] }
  | { readonly ok: false; readonly says: string };

/** Stalls as the board names them: by label, or by id where a stall has none or shares its label. */
export function printStalls(ids: readonly string[], stalls: readonly Named[]): string {
  const names = namesOf(stalls);
  return ids.map((id) => names.nameOf.get(id) ?? id).join(', ');
}

/**
 * The stalls that a text names, each once and in its order: labels or ids, with commas, semicolons or spaces between
 * them, and ranges of numbered names (`12-15`), in which every stall that there is between the two is meant.
 */
export function readStalls(text: string, stalls: readonly Named[]): StallsRead {
  const names = namesOf(stalls);
  const ids: string[] = [];
  for (const piece of text.split(/[,;]+/).map((one) => one.trim())) {
    if (piece === '') continue;
    const whole = names.idsOf(piece) ?? rangeOf(piece, names);
    const parts = whole ? [whole] : piece.split(/\s+/).map((word) => names.idsOf(word) ?? rangeOf(word, names) ?? word);
    for (const part of parts) {
      if (typeof part === 'string') return { ok: false, says: `no stall ${part}` };
      if (part.length > 1 && part.ambiguous)
        return { ok: false, says: `${part.ambiguous} is the number of ${part.length} stalls: ${part.join(', ')}` };
      ids.push(...part);
    }
  }
  return { ok: true, ids: [...new Set(ids)] };
}

/** Ids that a name stands for; `ambiguous` holds the name where it should stand for one and does not. */
type Meant = readonly string[] & { readonly ambiguous?: string };

interface Names {
  /** What each stall is called here. */
  readonly nameOf: ReadonlyMap<string, string>;
  readonly idsOf: (name: string) => Meant | null;
}

function namesOf(stalls: readonly Named[]): Names {
  const byLabel = new Map<string, string[]>();
  for (const { id, label } of stalls) {
    const name = label ?? id;
    addTo(byLabel, name, id);
  }
  const ids = new Set(stalls.map(({ id }) => id));
  return {
    nameOf: new Map(
      stalls.map(({ id, label }) => [id, label !== undefined && byLabel.get(label)!.length > 1 ? id : (label ?? id)]),
    ),
    idsOf: (name) => {
      const own = byLabel.get(name);
      if (own?.length === 1) return own;
      if (ids.has(name)) return [name];
      return own ? Object.assign([...own], { ambiguous: name }) : null;
    },
  };
}

/** The stalls from one numbered name to another; null where the text is no range between two that there are. */
function rangeOf(text: string, { nameOf, idsOf }: Names): Meant | null {
  const ends = /^(.*?)(\d+)\s*(?:-|–|to)\s*\1(\d+)$/.exec(text);
  if (!ends) return null;
  const [, prefix, from, to] = ends as unknown as [string, string, string, string];
  if (!idsOf(prefix + from) || !idsOf(prefix + to)) return null;
  const [low, high] = [Math.min(Number(from), Number(to)), Math.max(Number(from), Number(to))];
  const between = [...nameOf].flatMap(([id, name]) => {
    const number = name.startsWith(prefix) ? /^\d+$/.exec(name.slice(prefix.length)) : null;
    return number && Number(number[0]) >= low && Number(number[0]) <= high ? [{ id, at: Number(number[0]) }] : [];
  });
  return between.sort((a, b) => a.at - b.at).map(({ id }) => id);
}
