import type { SiteFile } from '../../../../routing/site/site.ts';
import { type HandPanel, type HandTransformer, handLayout } from './layout.ts';
import { doubleRows, facingRows, type Lot, PITCH } from './lots.ts';

/** A lot and how a careful hand feeds it. */
export interface HandCase {
  readonly ground: SiteFile;
  readonly hand: SiteFile;
}

const panel = (mainAmps: number, canopies: readonly number[], more: Partial<HandPanel> = {}): HandPanel => ({
  at: [-8, canopies[0]! * PITCH],
  mainAmps,
  busAmps: [225, 400, 600, 800].find((bus) => bus >= mainAmps)!,
  spaces: mainAmps > 600 ? 66 : 54,
  canopies,
  ...more,
});

const doubled = (
  lot: Omit<Lot, 'volts' | 'away'> & Partial<Lot>,
  panels: readonly HandPanel[],
  transformers: readonly HandTransformer[] = [],
): HandCase => {
  const ground = doubleRows({ volts: 208, away: 40, ...lot });
  return { ground, hand: handLayout(ground, panels, transformers) };
};

/** One panel at the end of two facing rows, one trunk over the aisle. */
const facing = (along: number): HandCase => {
  const ground = facingRows({ along, volts: 208, away: 40 });
  return { ground, hand: handLayout(ground, [panel(600, [0], { at: [-13, 0] })]) };
};

/** Lots of 8 to 120 stalls, as a careful hand would draw them: even rows, one trunk, panels at the source's end. */
export const HANDS = {
  8: () => doubled({ along: 4, canopies: 1 }, [panel(225, [0])]),
  16: () => doubled({ along: 8, canopies: 1 }, [panel(450, [0])]),
  24: () => doubled({ along: 12, canopies: 1 }, [panel(600, [0])]),
  26: () => doubled({ along: 13, canopies: 1 }, [panel(700, [0])]),
  30: () => doubled({ along: 15, canopies: 1 }, [panel(800, [0])]),
  48: () => doubled({ along: 12, canopies: 2 }, [panel(600, [0]), panel(600, [1])]),
  '48 at 480 V': () =>
    doubled(
      { along: 12, canopies: 2, volts: 480, away: 242 },
      [panel(600, [0], { transformer: 'T1' }), panel(600, [1], { transformer: 'T2' })],
      [
        { id: 'T1', at: [-8, -7], kva: 300, breakerAmps: 500 },
        { id: 'T2', at: [-8, PITCH - 7], kva: 300, breakerAmps: 500 },
      ],
    ),
  120: () =>
    doubled(
      { along: 20, canopies: 3 },
      [0, 1, 2].flatMap((k) => [
        panel(600, [k], { at: [-8, k * PITCH], stalls: [0, 10] }),
        panel(600, [k], { at: [-8, k * PITCH + 4], stalls: [10, 20] }),
      ]),
    ),
  '24 in two single rows': () => facing(12),
  '20 in two single rows': () => facing(10),
} satisfies Readonly<Record<string, () => HandCase>>;
