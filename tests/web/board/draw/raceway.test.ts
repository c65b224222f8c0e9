import { describe, expect, test } from 'vitest';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { type Draft, EMPTY, type Spot } from '../../../../web/board/draw/draft.ts';
import { racewayTool } from '../../../../web/board/draw/tools/raceway.ts';
import { applyEdit } from '../../../../web/document/edit.ts';
import { SMALL } from '../../document/small-site.ts';

const OVERHEAD = { method: 'EMT', place: 'overhead', elevation: 11, belowMembers: 1 } as const;
const ground = { file: SMALL, site: toSite(SMALL) };
const open = (x: number, y: number): Spot => ({ at: [x, y], z: null, ref: null });
/** On the entry of the panel, 8 ft up, and on the raceway at 12 ft. */
const ENTRY: Spot = { at: [50, 18], z: 8, ref: { list: 'equipment', id: 'P1' } };
const ON_R1: Spot = { at: [10, 18], z: 12, ref: { list: 'raceways', id: 'R1' } };

function drawn(...places: readonly Spot[]): Draft {
  const spots: Spot[] = [];
  for (const place of places)
    spots.push(...racewayTool.added!(ground, { ...EMPTY, spots: [...spots] }, place, OVERHEAD));
  return { ...EMPTY, spots };
}

function pathOf(draft: Draft) {
  const edit = racewayTool.edit(ground, { ...draft, whole: true }, OVERHEAD);
  return (applyEdit(SMALL, edit!) as SiteFile).raceways!.at(-1)!.path;
}

describe('a raceway that is drawn', () => {
  test('begins at an entry and goes up to where it runs', () => {
    expect(pathOf(drawn(ENTRY, open(30, 18), open(30, 0)))).toEqual([
      [50, 18, 8],
      [50, 18, 11],
      [30, 18, 11],
      [30, 0, 11],
    ]);
  });

  test('goes up at its end to the raceway that it joins', () => {
    expect(pathOf(drawn(open(10, 0), ON_R1))).toEqual([
      [10, 0, 11],
      [10, 18, 11],
      [10, 18, 12],
    ]);
  });

  test('begun on a raceway at another elevation it goes there first', () => {
    expect(pathOf(drawn(ON_R1, open(10, 0)))).toEqual([
      [10, 18, 12],
      [10, 18, 11],
      [10, 0, 11],
    ]);
  });

  test('goes up or down where it stands by a typed elevation, and runs on there', () => {
    const raised = racewayTool.raised!(drawn(open(0, 0), open(10, 0)), 9, OVERHEAD);
    expect(raised.options.elevation).toBe(9);
    expect(raised.draft.spots.map(({ at, z }) => [...at, z])).toEqual([
      [0, 0, 11],
      [10, 0, 11],
      [10, 0, 9],
    ]);
  });

  test('says its length, where it is, and its bends since the last pull point against the limit', () => {
    const two = racewayTool.words(ground, drawn(ENTRY, open(30, 18), open(30, 0)), OVERHEAD);
    expect(two).toEqual(['41\' 0" at 11\' 0"', '2 bends, 180° of 360° since P1']);
    // PB1 stands at 12 ft over the entry.
    const past = drawn(open(60, 18), { at: [50, 18], z: 12, ref: { list: 'pullpoints', id: 'PB1' } });
    const words = racewayTool.words(
      ground,
      {
        ...past,
        spots: [...past.spots, ...racewayTool.added!(ground, past, open(50, 40), { ...OVERHEAD, elevation: 12 })],
      },
      { ...OVERHEAD, elevation: 12 },
    );
    expect(words[1]).toBe('0 bends, 0° of 360° since PB1');
  });
});
