import { counted } from '../../../words/counted.ts';

/** Kinds of entity that are not read, in the words of those who draw: one, and several. */
const KINDS: ReadonlyMap<string, readonly [one: string, many: string]> = new Map([
  ['INSERT', ['block that is not in it', 'blocks that are not in it']],
  ['IMAGE', ['picture', 'pictures']],
  ['WIPEOUT', ['mask', 'masks']],
  ['3DSOLID', ['solid body', 'solid bodies']],
  ['BODY', ['solid body', 'solid bodies']],
  ['REGION', ['region', 'regions']],
  ['SURFACE', ['surface', 'surfaces']],
  ['RAY', ['construction line', 'construction lines']],
  ['XLINE', ['construction line', 'construction lines']],
  ['TOLERANCE', ['tolerance frame', 'tolerance frames']],
  ['SHAPE', ['shape of a shape file', 'shapes of a shape file']],
  ['OLE2FRAME', ['pasted object', 'pasted objects']],
  ['OLEFRAME', ['pasted object', 'pasted objects']],
  ['PDFUNDERLAY', ['PDF page under it', 'PDF pages under it']],
  ['DWFUNDERLAY', ['sheet under it', 'sheets under it']],
  ['DGNUNDERLAY', ['drawing under it', 'drawings under it']],
  ['ACAD_PROXY_ENTITY', ['object of another program', 'objects of another program']],
  ['DIMENSION', ['dimension without lines', 'dimensions without lines']],
  ['ACAD_TABLE', ['table without lines', 'tables without lines']],
]);
/** Kinds whose entities are drawn, so that one that is not is damaged. */
const DAMAGED = ['damaged thing', 'damaged things'] as const;

/** Kinds that draw nothing in plan by their nature. */
export const SILENT_KINDS: ReadonlySet<string> = new Set(
  'VIEWPORT ATTDEF LIGHT SUN CAMERA SECTION SEQEND VERTEX GEOPOSITIONMARKER'.split(' '),
);

/** What is not drawn, in few words, what there is most of first. */
export function leftOutWords(skipped: ReadonlyMap<string, number>, isDrawn: (kind: string) => boolean): string {
  const counts = new Map<string, { count: number; one: string; many: string }>();
  for (const [kind, count] of skipped) {
    const [one, many] = KINDS.get(kind) ?? (isDrawn(kind) ? DAMAGED : [kind, kind]);
    const known = counts.get(one);
    if (known) known.count += count;
    else counts.set(one, { count, one, many });
  }
  return [...counts.values()]
    .sort((a, b) => b.count - a.count)
    .slice(0, 8)
    .map(({ count, one, many }) => counted(count, one, many))
    .join(', ');
}

/** What was met in a drawing and is not shown, by why. */
export interface Unseen {
  /** In paper space. */
  paper: number;
  /** On layers that are off or frozen, by layer. */
  readonly layers: Map<string, number>;
  /** Hidden by themselves. */
  hidden: number;
  /** Notes longer than what is read of one. */
  cut: number;
  /** Blocks that are clipped in the file and drawn whole. */
  clipped: number;
  /** Files that it refers to. */
  readonly refersTo: Set<string>;
}

const listed = (names: readonly string[]): string =>
  names.length <= 4 ? names.join(', ') : `${names.slice(0, 3).join(', ')} and ${names.length - 3} more`;

/** The same in sentences, each once. */
export function unseenNotes(unseen: Unseen): readonly string[] {
  const { paper, layers, hidden, cut, clipped, refersTo } = unseen;
  const onLayers = [...layers.values()].reduce((sum, count) => sum + count, 0);
  return [
    ...(refersTo.size > 0
      ? [
          `It refers to ${listed([...refersTo])}, which ${refersTo.size === 1 ? 'is' : 'are'} not in it: bind ${refersTo.size === 1 ? 'it' : 'them'} before saving.`,
        ]
      : []),
    ...(onLayers > 0
      ? [
          `Hidden in it: ${counted(onLayers, 'thing')} on ${layers.size === 1 ? 'layer' : 'layers'} ${listed([...layers.keys()])}.`,
        ]
      : []),
    ...(paper > 0 ? [`Left out: ${counted(paper, 'thing')} of its sheets (paper space).`] : []),
    ...(hidden > 0 ? [`Hidden in it: ${counted(hidden, 'thing')} by themselves.`] : []),
    ...(clipped > 0 ? [`Drawn whole: ${counted(clipped, 'block')} that it clips.`] : []),
    ...(cut > 0 ? [`Cut short: ${counted(cut, 'note')} of over 32,000 letters.`] : []),
  ];
}
