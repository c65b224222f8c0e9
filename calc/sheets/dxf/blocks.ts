import type { DrawnSymbol } from '../drawing/drawing.ts';
import { SYMBOLS } from '../drawing/symbols.ts';
import { blockTags } from './attributes.ts';
import type { WrittenBlock } from './dimension-entities.ts';
import { addLetters, type EntityWriter, entityWriter } from './entity-writer.ts';

export const blockName = (symbol: string): string => symbol.replace('-', '_').toUpperCase();

/** Attributes that each symbol asks for. */
const ASKS: Readonly<Record<DrawnSymbol['symbol'], 'DROP' | 'OPENING'>> = {
  box: 'DROP',
  retractor: 'DROP',
  'pull-point': 'OPENING',
  junction: 'OPENING',
  handhole: 'OPENING',
};

/** Tags that are seen; the others are for lists. */
export const isSeenTag = (tag: string): boolean => tag === 'TAG' || tag.startsWith('CIRCUIT') || tag === 'KIND';

/** A block for each symbol with the attributes that it carries, and blocks of attributes alone for what has no symbol. */
export function symbolBlocks(next: () => string, scaled: (feet: number) => number, circuits: number): WrittenBlock[] {
  const tags = blockTags(circuits);
  const made = (name: string, asks: readonly string[], draw: (writer: EntityWriter) => void): WrittenBlock => {
    const record = next();
    const writer = entityWriter(next, record, false);
    draw(writer);
    for (const tag of asks) addDefinition(writer, tag, scaled(0.6));
    return { name, record, text: writer.written, isAnonymous: false, hasAttributes: true };
  };
  const symbols = (Object.keys(SYMBOLS) as DrawnSymbol['symbol'][]).map((symbol) =>
    made(blockName(symbol), tags[ASKS[symbol]]!, (writer) => {
      const { circles, lines } = SYMBOLS[symbol];
      for (const { points, closed } of lines)
        writer.polyline(
          points.map(([x, y]) => [scaled(x), scaled(y)]),
          closed,
          { layer: '0' },
        );
      for (const { radius, filled } of circles)
        if (filled) writer.dot([0, 0], scaled(radius), { layer: '0' });
        else writer.circle([0, 0, 0], scaled(radius), { layer: '0' });
    }),
  );
  const bare = ['EQUIPMENT_TAG', 'CONDUIT_TAG', 'FEEDER_TAG'].map((name) => made(name, tags[name]!, () => {}));
  return [...symbols, ...bare];
}

function addDefinition(writer: EntityWriter, tag: string, height: number): void {
  writer.other('ATTDEF', { layer: '0' }, (tags) => {
    addLetters(tags, { words: '', at: [0, 0], width: 0, height, turn: 0, style: 'LETTERS' }, 'AcDbText');
    tags.add([100, 'AcDbAttributeDefinition'], [280, 0], [3, tag], [2, tag], [70, isSeenTag(tag) ? 0 : 1]);
  });
}
