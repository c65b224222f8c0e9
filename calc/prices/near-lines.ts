import { byWords } from './kind.ts';
import type { PriceRow } from './price-list.ts';

/** A line of ours that a supplier's may be. */
export interface NearLine<Line> {
  readonly line: Line;
  /** Share of the words of ours that the supplier's have, 0 to 1. */
  readonly score: number;
}

/** How suppliers write what is written out here. Common practice, no source. */
const WRITTEN: readonly (readonly [RegExp, string])[] = [
  [/["″]/g, ' in '],
  [/\binch(?:es)?\b/g, 'in'],
  [/#(\d+)/g, '$1 awg '],
  [/\b(\d+(?:\/0)?) (?=str\b|sol\b|stranded\b|solid\b)/g, '$1 awg '],
  [/\b(\d+)(?: ?- ?| )?(?:p|pole)\b/g, '$1-pole'],
  [/\b(\d+)(?: )?(?:a|amps?)\b/g, '$1 a'],
  [/\b(\d+)(?: )?deg(?:rees?)?\b/g, '$1 degrees'],
  [/\bmcm\b/g, 'kcmil'],
  [/\bsch(?:ed(?:ule)?)?\.? ?(40|80)(?: pvc)?\b|\bpvc ?(?:sch\.? ?)?(40|80)\b/g, 'pvc$1$2'],
  [/\bj ?-?box\b/g, 'junction box'],
  [/\bload ?cent(?:er|re)\b/g, 'panelboard'],
];
const WORDS: Readonly<Record<string, string>> = {
  cu: 'copper',
  al: 'aluminum',
  alum: 'aluminum',
  aluminium: 'aluminum',
  thhn: 'thwn-2',
  'thhn/thwn': 'thwn-2',
  'thhn/thwn-2': 'thwn-2',
  thwn: 'thwn-2',
  xhhw: 'xhhw-2',
  wire: 'conductor',
  cable: 'conductor',
  conduit: 'raceway',
  pipe: 'raceway',
  tubing: 'raceway',
  tbg: 'raceway',
  rigid: 'rmc',
  grc: 'rmc',
  cplg: 'coupling',
  coup: 'coupling',
  conn: 'connector',
  elb: 'elbow',
  ell: 'elbow',
  bkr: 'breaker',
  brkr: 'breaker',
  pnl: 'panelboard',
  panel: 'panelboard',
  swbd: 'switchboard',
  xfmr: 'transformer',
  gnd: 'grounding',
  ground: 'grounding',
  strp: 'strap',
  disc: 'disconnect',
  blk: 'black',
  wht: 'white',
  grn: 'green',
  blu: 'blue',
};
const SIZED = /^\d+(?:[-/.]\d+(?:\/\d+)?)?$/;
const UNITS: ReadonlySet<string> = new Set(['in', 'awg', 'kcmil', 'a', 'v', 'kva', 'ft', 'degrees']);

/** The words of a line as they are compared: written out, a size together with its unit. */
const tokensOf = byWords((words) => {
  const written = WRITTEN.reduce((text, [from, to]) => text.replace(from, to), words.toLowerCase());
  const parts = written.split(/[^a-z0-9./-]+/).flatMap((part) => {
    const word = part.replace(/^[./-]+|[./-]+$/g, '');
    return word === '' ? [] : [Object.hasOwn(WORDS, word) ? WORDS[word]! : word];
  });
  const tokens = new Map<string, string>();
  for (let i = 0; i < parts.length; i++) {
    const [one, next = ''] = [parts[i]!, parts[i + 1]];
    if (SIZED.test(one) && UNITS.has(next)) {
      tokens.set(`${one} ${next}`, next);
      i++;
    } else tokens.set(one, /^\d+-pole$/.test(one) ? 'pole' : '');
  }
  // What is insulated is a conductor, whether the word stands there or not.
  if (['thwn-2', 'xhhw-2'].some((word) => tokens.has(word))) tokens.set('conductor', '');
  return tokens as ReadonlyMap<string, string>;
});

/** Less of its words than this and a line is not near. Common practice, no source. */
const LEAST = 0.55;
/** A size counts as so many words. */
const SIZE_WEIGHT = 2;

/**
 * The lines of ours that a supplier's words come nearest to, the nearest first: to be shown, never to be taken unasked.
 * Each is scored by the share of its words that the supplier's have, sizes twice; one of another size is none.
 */
export function nearLines<Line extends Pick<PriceRow, 'item' | 'spec'> & { readonly unit: string }>(
  theirs: string,
  unit: string | null,
  lines: readonly Line[],
  most = 3,
): readonly NearLine<Line>[] {
  const words = tokensOf(theirs, '');
  const sizes = new Map<string, string>();
  for (const [token, of] of words) if (of !== '') sizes.set(of, token);
  const near = lines.flatMap((line): NearLine<Line>[] => {
    if (unit !== null && line.unit !== unit) return [];
    let [shared, all] = [0, 0];
    for (const [token, of] of tokensOf(`${line.item} ${line.spec}`, '')) {
      const weight = of === '' ? 1 : SIZE_WEIGHT;
      all += weight;
      if (words.has(token)) shared += weight;
      else if (of !== '' && sizes.has(of)) return [];
    }
    const score = all > 0 ? shared / all : 0;
    return score >= LEAST ? [{ line, score }] : [];
  });
  return near.sort((a, b) => b.score - a.score).slice(0, most);
}
