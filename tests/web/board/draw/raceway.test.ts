import { describe, expect, test } from 'vitest';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { type BoardDraft, EMPTY, type Ground, type Spot } from '../../../../web/board/draw/draft.ts';
import type { RacewayOptions } from '../../../../web/board/draw/options.ts';
import { racewayTool } from '../../../../web/board/draw/tools/raceway.ts';
import { applyEdit } from '../../../../web/document/change/edit.ts';
import { SMALL } from '../../document/small-site.ts';

const OVERHEAD = { method: 'EMT', place: 'overhead', surface: 'asphalt', elevation: 11, belowMembers: 1 } as const;
const ground: Ground = { file: SMALL, site: toSite(SMALL) };
const open = (x: number, y: number): Spot => ({ at: [x, y], z: null, ref: null });
/** On the entry of the panel, 8 ft up, and on the raceway at 12 ft. */
const ENTRY: Spot = { at: [50, 18], z: 8, ref: { list: 'equipment', id: 'P1' } };
const ON_R1: Spot = { at: [10, 18], z: 12, ref: { list: 'raceways', id: 'R1' } };

function drawnOn(on: Ground, options: RacewayOptions, places: readonly Spot[]): BoardDraft {
  const spots: Spot[] = [];
  for (const place of places) spots.push(...racewayTool.added!(on, { ...EMPTY, spots: [...spots] }, place, options));
  return { ...EMPTY, spots };
}
const drawn = (...places: readonly Spot[]): BoardDraft => drawnOn(ground, OVERHEAD, places);

function pathOf(draft: BoardDraft, on: Ground = ground) {
  const edit = racewayTool.edit(on, { ...draft, whole: true }, OVERHEAD);
  return (applyEdit(on.file, edit!) as SiteFile).raceways!.at(-1)!.path;
}

test('in the ground it is under what the form says, and a file need not say asphalt', () => {
  const under = (surface: RacewayOptions['surface'], place: RacewayOptions['place'] = 'underground') => {
    const edit = racewayTool.edit(
      ground,
      { ...drawn(open(0, 0), open(10, 0)), whole: true },
      { ...OVERHEAD, method: 'PVC40', place, surface, elevation: -2 },
    );
    return (applyEdit(ground.file, edit!) as SiteFile).raceways!.at(-1)!.surface;
  };
  expect([under('soil'), under('concrete'), under('asphalt'), under('soil', 'overhead')]).toEqual([
    'soil',
    'concrete',
    undefined,
    undefined,
  ]);
});

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

/** A valley across x = 0: its beam falls from 14 ft at both edges to 12 ft in the middle; purlins lie 6 in. over it. */
const VALLEY: SiteFile = {
  ...SMALL,
  members: [
    { id: 'B1', from: [0, -20, 14], to: [0, 0, 12] },
    { id: 'B2', from: [0, 0, 12], to: [0, 20, 14] },
    { id: 'PU1', from: [-30, 10, 13.5], to: [30, 10, 13.5] },
  ],
};
const valley: Ground = { file: VALLEY, site: toSite(VALLEY) };
const on = (id: string, x: number, y: number, z: number): Spot => ({ at: [x, y], z, ref: { list: 'members', id } });

describe('a raceway under sloping steel', () => {
  const hung = (...places: readonly Spot[]) => pathOf(drawnOn(valley, OVERHEAD, places), valley);

  test('hangs a foot below the member that it is begun on, and follows its slope', () => {
    expect(hung(on('B2', 0, 15, 13.5), on('B2', 0, 5, 12.5))).toEqual([
      [0, 15, 12.5],
      [0, 5, 11.5],
    ]);
  });

  test('hangs by another measure where that is typed, and not at all where none is', () => {
    const places = [on('B2', 0, 15, 13.5), on('B2', 0, 5, 12.5)];
    const zs = (belowMembers: number | null) =>
      drawnOn(valley, { ...OVERHEAD, belowMembers }, places).spots.map(({ z }) => z);
    expect(zs(0.25)).toEqual([13.25, 12.25]);
    expect(zs(null)).toEqual([11, 11]);
  });

  test('turns with the steel in the middle of a valley', () => {
    expect(hung(on('B1', 0, -15, 13.5), on('B2', 0, 10, 13))).toEqual([
      [0, -15, 12.5],
      [0, 0, 11],
      [0, 10, 12],
    ]);
  });

  test('keeps below the beams along a purlin that lies over them', () => {
    expect(hung(on('B2', 0, 10, 13), on('PU1', 20, 10, 13.5))).toEqual([
      [0, 10, 12],
      [20, 10, 12],
    ]);
  });

  test('in the open keeps the elevation that it has, and goes down at its end to what it joins', () => {
    expect(hung(on('B2', 0, 10, 13), open(0, 30), ENTRY)).toEqual([
      [0, 10, 12],
      [0, 30, 12],
      [50, 18, 12],
      [50, 18, 8],
    ]);
  });

  test('from an entry goes up to below the steel', () => {
    expect(hung(ENTRY, on('PU1', 30, 10, 13.5), on('PU1', 0, 10, 13.5))).toEqual([
      [50, 18, 8],
      [50, 18, 12],
      [30, 10, 12],
      [0, 10, 12],
    ]);
  });

  test('begun in the open, or with its elevation typed, it stays level', () => {
    expect(hung(open(0, 40), on('B2', 0, 15, 13.5))).toEqual([
      [0, 40, 11],
      [0, 15, 11],
    ]);
    const typed = racewayTool.raised!(EMPTY, 10, OVERHEAD).options;
    expect(drawnOn(valley, typed, [on('B2', 0, 15, 13.5), on('B2', 0, 5, 12.5)]).spots.map(({ z }) => z)).toEqual([
      10, 10,
    ]);
  });

  test('on the ground or in it takes nothing from what is above', () => {
    const surface = { ...OVERHEAD, place: 'surface', elevation: 0 } as const;
    expect(drawnOn(valley, surface, [on('B2', 0, 15, 13.5)]).spots[0]!.z).toBe(0);
  });
});
