import { MARGIN_KINDS } from '../../calc/plan/margins.ts';
import { COVERAGE_STEPS } from '../../calc/plan/stall-coverage.ts';
import { LOAD_STEPS } from '../../calc/steel/load-steps.ts';
import { clippedLine } from '../../routing/plane/clip-line.ts';
import { BOUNDARY_KINDS, BOUNDARY_WORDS } from '../../routing/site/schema/vocabulary.ts';
import { boxInView } from '../board/camera.ts';
import { isOfLot } from '../board/kinds/boundaries.ts';
import type { BoardInk, InkName } from '../board/painting/ink.ts';
import { marksInView, type Painting } from '../board/painting/painting.ts';
import { MARGINS_FROM } from '../board/pictures/stalls/margin-bars.ts';
import type { SceneList } from '../board/scene/scene.ts';
import { signOf } from '../board/scene/sign.ts';
import type { OnPaper } from './draw-plan.ts';
import { PAPER_VIEWS } from './paper-view.ts';

/** A line of the legend: its words and a picture of 26 by 14 pixels, as paths of SVG. */
export interface LegendEntry {
  readonly words: string;
  readonly paths: readonly SwatchPath[];
}

export interface SwatchPath {
  readonly d: string;
  readonly stroke?: string;
  readonly fill?: string;
  readonly width?: number;
  readonly dash?: string;
}

const ring = (x: number, y: number, r: number): string =>
  `M${x - r} ${y} a${r} ${r} 0 1 0 ${2 * r} 0 a${r} ${r} 0 1 0 ${-2 * r} 0`;
const square = (half: number): string => `M${13 - half} ${7 - half} h${2 * half} v${2 * half} h${-2 * half} Z`;
const AREA = 'M1 1 H25 V13 H1 Z';
const ALONG = 'M0 7 H26';

/** What the signs on a picture mean, of those that are on it alone, in the order of the trade: ground, steel, work, signs. */
export function legendOf({ painting, ink, camera, size }: OnPaper): readonly LegendEntry[] {
  const scene = painting.base();
  const seen = <L extends SceneList>(list: L) =>
    painting.shows(list) ? marksInView(scene, list, painting.frame().box, painting.hidden()) : [];
  const entries: LegendEntry[] = [];
  const add = (some: boolean, words: string, ...paths: SwatchPath[]): void => {
    if (some) entries.push({ words, paths });
  };
  const drops = seen('drops');
  const raceways = seen('raceways');
  const equipment = seen('equipment');
  const shaded = painting.shading() !== null;

  add(seen('stalls').length > 0, 'stall', { d: 'M4 13 V1 H22 V13', stroke: ink.stripe });
  // A line round the lot is far larger than what of it is seen.
  const view = boxInView(camera, PAPER_VIEWS[size]);
  const boundaries = seen('boundaries')
    .filter(({ boundary: { path } }) => path.some((to, i) => i > 0 && clippedLine(path[i - 1]!, to, view) !== null))
    .map(({ boundary: { kind = 'property' } }) => kind);
  for (const kind of BOUNDARY_KINDS)
    add(boundaries.includes(kind), BOUNDARY_WORDS[kind], {
      d: ALONG,
      ...(isOfLot(kind)
        ? { stroke: ink.ink, width: 1.6, dash: '9 2 2 2 2 2' }
        : { stroke: ink.existing, dash: '9 3 3 3' }),
    });
  add(seen('aisles').length > 0, 'aisle', { d: AREA, fill: ink.aisle });
  add(
    seen('keepouts').length > 0,
    'keep-out',
    { d: AREA, stroke: ink.ruleStrong, dash: '5 3' },
    { d: 'M4 13 L16 1 M13 13 L25 1', stroke: ink.hatch },
  );
  add(seen('columns').length > 0, 'column', { d: square(4), fill: ink.existing, stroke: ink.ink, width: 1.2 });
  add(seen('members').length > 0 && painting.loads() === null, 'beam or purlin above', {
    d: ALONG,
    stroke: ink.existing,
    dash: '3 4',
  });
  add(
    equipment.some(({ equipment: { kind } }) => kind === 'source'),
    'service',
    { d: 'M5 2 H21 V12 H5 Z', fill: ink.existingFill, stroke: ink.existing, width: 1.2 },
  );
  add(
    equipment.some(({ equipment: { kind } }) => kind !== 'source'),
    'equipment',
    { d: 'M5 2 H21 V12 H5 Z', fill: ink.ink },
  );
  for (const buried of [false, true])
    add(
      raceways.some(({ raceway: { place } }) => (place === 'underground') === buried),
      buried ? 'raceway in the ground' : 'raceway',
      { d: 'M0 4 H26 M0 10 H26', stroke: ink.tubeEdge, ...(buried && { dash: '8 4' }) },
      { d: ALONG, stroke: ink.tube, width: 5 },
    );
  phases(painting, ink, add);
  add(
    seen('feeders').some(({ routed }) => !routed),
    'feeder',
    { d: ALONG, stroke: ink.ink, dash: '6 4' },
  );
  add(seen('pullpoints').length > 0, 'pull point', { d: square(4.5), stroke: ink.ink, width: 1.4 });
  const core = { d: ring(13, 7, 1.5), fill: ink.ink };
  const mounts = new Set(drops.map(({ drop: { mount } }) => mount ?? 'overhead'));
  add(mounts.has('overhead'), 'drop from above', { d: ring(13, 7, 5), stroke: ink.ink, width: 1.4 }, core);
  add(mounts.has('pedestal'), 'pedestal', { d: square(5), stroke: ink.ink, width: 1.4 }, core);
  add(mounts.has('wall'), 'wall box', { d: 'M8 6 a5 5 0 0 0 10 0 Z', stroke: ink.ink, width: 1.4 });
  const fares = new Set(drops.map(({ drop }) => signOf(scene, drop.id).severity));
  add(
    fares.has('fail'),
    'fails a check',
    { d: 'M13 1 L19 7 L13 13 L7 7 Z', fill: ink.fail },
    { d: 'M11 5 L15 9 M15 5 L11 9', stroke: '#fff', width: 1.4 },
  );
  add(fares.has('warn'), 'to check', { d: 'M13 2 L18.5 11.5 H7.5 Z', stroke: ink.warn, width: 1.8 });
  const { margins, scale, charging } = painting.frame();
  add(margins && scale >= MARGINS_FROM && drops.length > 0, `bars, what is left of: ${MARGIN_KINDS.join(', ')}`, {
    d: 'M8 1 H16 V4 H8 Z M8 6 H20 V9 H8 Z M8 11 H13 V14 H8 Z',
    fill: ink.soft,
  });
  add(charging !== null && drops.length > 0, 'share of its most that a drop gives', {
    d: 'M13 1 a6 6 0 1 1 -6 6',
    stroke: ink.ink,
    width: 2.5,
  });
  if (shaded) for (const [step, fill] of COVERED) add(true, step, { d: AREA, fill: ink[fill], stroke: ink.stripe });
  if (painting.loads())
    for (const [step, name, width] of LOADED) add(true, step, { d: ALONG, stroke: ink[name], width });
  return entries;
}

const COVERED = [...COVERAGE_STEPS].reverse().map((step) => {
  const fills = {
    all: 'cover3',
    'half and over': 'cover2',
    'under half': 'cover1',
    none: 'cover0',
    unserved: 'sheet',
  } as const;
  const words = {
    all: 'every inlet in reach',
    'half and over': 'half and over in reach',
    'under half': 'under half in reach',
    none: 'no inlet in reach',
    unserved: 'no charger',
  };
  return [words[step], fills[step]] as const;
});

const LOADED = LOAD_STEPS.filter((step) => step !== 'nothing').map((step) => {
  const lines = {
    'under 100 lb': ['cover2', 3],
    '100 to 300 lb': ['cover1', 5],
    '300 lb and over': ['cover0', 8],
  } as const;
  return [step, ...lines[step as keyof typeof lines]] as const;
});

/** The colors of the line conductors, where runs are drawn in them. */
function phases(
  painting: Painting,
  ink: BoardInk,
  add: (some: boolean, words: string, ...paths: SwatchPath[]) => void,
): void {
  const { box, scale } = painting.frame();
  if (!painting.shows('runs') || scale < 2 || painting.raised()) return;
  const runs = marksInView(painting.base(), 'runs', box, painting.hidden());
  const colors = new Set(runs.flatMap(({ lanes }) => lanes.map(({ color }) => color)));
  const of = (names: readonly InkName[]): readonly InkName[] => names.filter((name) => colors.has(name as never));
  for (const names of [of(['black', 'red', 'blue']), of(['brown', 'orange', 'yellow'])])
    add(
      names.length > 0,
      `lines: ${names.join(', ')}`,
      ...names.map((name, i) => ({ d: `M0 ${4 + 3 * i} H26`, stroke: ink[name], width: 2 })),
    );
}
