import { readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { sources } from './sources.ts';

const ROOT = resolve(import.meta.dirname, '../..');

interface Arrow {
  readonly from: string;
  readonly to: string;
}

/** Every import of every source of the rooms: a project path, or a package's name. */
function arrowsOf(path: string): Arrow[] {
  const text = readFileSync(join(ROOT, path), 'utf8');
  return [...text.matchAll(/(?:from|import)\s*\(?\s*'([^']+)'/g)].map(([, target = '']) => ({
    from: path,
    to: target.startsWith('.') ? relative(ROOT, resolve(ROOT, dirname(path), target.replace(/\?.*$/, ''))) : target,
  }));
}

const ARROWS = ['routing', 'calc', 'web'].flatMap(sources).flatMap(arrowsOf);

const offending = (from: RegExp, to: RegExp, but?: RegExp): string[] =>
  ARROWS.filter((arrow) => from.test(arrow.from) && to.test(arrow.to) && !but?.test(arrow.from)).map(
    (arrow) => `${arrow.from} -> ${arrow.to}`,
  );

describe('arrows between the rooms run one way', () => {
  test('there are arrows to look at', () => {
    expect(ARROWS.length).toBeGreaterThan(100);
    expect(ARROWS.some(({ from, to }) => from.startsWith('calc/') && to.startsWith('routing/'))).toBe(true);
  });
  test('routing knows no volts, no money and no page', () => {
    expect(offending(/^routing\//, /^(calc|web|tests)\//)).toEqual([]);
  });
  test('calc knows no page', () => {
    expect(offending(/^calc\//, /^(web|tests)\//)).toEqual([]);
  });
  test('only the command line knows the machine', () => {
    expect(offending(/^(routing|calc)\//, /^(node:|fs$|path$)/, /^calc\/cli\//)).toEqual([]);
  });
  test('no room but the page knows the page’s packages', () => {
    expect(
      offending(/^(routing|calc)\//, /^(react|react-dom|konva|react-konva|zustand|idb|browser-fs-access)($|\/)/),
    ).toEqual([]);
  });
  test('the stages do not know the command line', () => {
    expect(offending(/^(routing|calc\/(?!cli\/))/, /^calc\/cli\//)).toEqual([]);
  });
  test('turf stands at the georeferenced door only', () => {
    expect(offending(/./, /^@turf\//, /(geojson|georef)/i)).toEqual([]);
  });
});

/** The floors of each room, the lowest first: each imports only those before it, types included. */
const FLOORS = {
  routing: ['words', 'lists', 'kept', 'plane', 'site', 'standing', 'network', 'reach', 'checks', 'propose'],
  calc: [
    'plan-file',
    'words',
    'tables',
    'prices',
    'circuits',
    'branches',
    'supply',
    'steel',
    'day',
    'takeoff',
    'checks',
    'plan',
    'field',
    'why',
    'propose',
    'study',
    'space',
    'sheets',
    'library',
    'cli',
  ],
  web: [
    'parts',
    'document',
    'words',
    'kept-page',
    'long-work',
    'proposal',
    'page-state',
    'board',
    'underlay',
    'sheets',
    'print',
    'panels',
    'tables',
    'strip',
    'field',
    'kept-work',
    'page',
    'main.tsx',
  ],
} as const;

describe.each(Object.entries(FLOORS))('%s is a stack of floors', (room, list) => {
  const floors: readonly string[] = list;
  const floorOf = (path: string): string => path.split('/')[1] ?? '';
  test('every file stands on one of them', () => {
    expect(sources(room).filter((path) => !floors.includes(floorOf(path)))).toEqual([]);
    expect(floors.filter((floor) => !sources(room).some((path) => floorOf(path) === floor))).toEqual([]);
  });
  test('none imports from a floor above it', () => {
    const inside = ARROWS.filter(
      ({ from, to }) => from.startsWith(`${room}/`) && to.startsWith(`${room}/`) && /\.tsx?$/.test(to),
    );
    expect(inside.length).toBeGreaterThan(500);
    expect(
      inside
        .filter(({ from, to }) => floors.indexOf(floorOf(from)) < floors.indexOf(floorOf(to)))
        .map(({ from, to }) => `${from} -> ${to}`),
    ).toEqual([]);
  });
});

test('the published shape of a plan imports nothing of calc', () => {
  expect(offending(/^calc\/plan-file\//, /^calc\/(?!plan-file\/)/)).toEqual([]);
});

/** Arrows inside a folder that point up its rooms, or at what is none of them; what lies in none of those named is of the last. */
function upward(folder: string, rooms: readonly string[], loose: string | null): readonly string[] {
  const inside = ARROWS.filter(({ from, to }) => from.startsWith(`${folder}/`) && to.startsWith(`${folder}/`));
  expect(inside.length).toBeGreaterThan(100);
  const rank = (path: string): number => {
    const name = path.slice(folder.length + 1).split('/')[0] ?? '';
    const at = rooms.indexOf(name);
    return at < 0 && loose !== null && !path.slice(folder.length + 1).includes('/') ? rooms.indexOf(loose) : at;
  };
  return inside
    .filter(({ from, to }) => rank(from) < 0 || rank(from) < rank(to))
    .map(({ from, to }) => `${from} -> ${to}`);
}

test('the drawing set is a stack too: its drawing kit knows no sheet', () => {
  const SHEETS = [
    'kit',
    'as-built',
    'details',
    'schedules',
    'plans',
    'sections',
    'one-line',
    'days',
    'strips',
    'legend',
    'cover',
    'set',
    'drawing-set.ts',
    'report',
  ];
  expect(upward(join('calc', 'sheets', 'pdf'), SHEETS, null)).toEqual([]);
});

test('the open document is a stack too: a change knows no file, the document no store that keeps it', () => {
  const ROOMS = ['change', 'find', 'files', 'edits', 'the open document', 'keeping'];
  expect(upward(join('web', 'document'), ROOMS, 'the open document')).toEqual([]);
});

test('nothing in a room but the command line asks the clock, a random source or the network', () => {
  const CALLS = /\b(Math\.random|Date\.now|new Date\((?!\d)|performance\.now|setTimeout|fetch)\b/;
  const stages = ['routing', 'calc'].flatMap(sources).filter((path) => !path.startsWith(join('calc', 'cli')));
  expect(stages.length).toBeGreaterThan(300);
  expect(
    stages.flatMap((path) => {
      const call = CALLS.exec(readFileSync(join(ROOT, path), 'utf8'));
      return call === null ? [] : [`${path}: ${call[0]}`];
    }),
  ).toEqual([]);
});

test('no two checks have one name', () => {
  const named = ['routing', 'calc']
    .flatMap(sources)
    .flatMap((path) =>
      [...readFileSync(join(ROOT, path), 'utf8').matchAll(/export (?:const|function) (\w+Findings)\b/g)].map(
        ([, name = '']) => name,
      ),
    );
  expect(named.length).toBeGreaterThan(20);
  expect(named.filter((name, place) => named.indexOf(name) !== place)).toEqual([]);
});
