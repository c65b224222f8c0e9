import type { Run } from '../../../../routing/network/run.ts';
import { type Area, top } from '../kit/area.ts';
import type { Draft, Job } from '../kit/draft.ts';
import type { Lettering } from '../kit/lettering/lettering.ts';
import { LEADING } from '../kit/lettering/letters.ts';
import { type Pen, penWith } from '../kit/pen.ts';
import { drawSmallDelta } from '../kit/revision/delta.ts';
import { pointsPerFoot, scalesOf, scaleThatFits } from '../kit/view/scales.ts';
import { type RunStrip, runStrip } from './run-strip.ts';
import { drawStrip, STRIP_SIDES, type StripFrame, stripHeight } from './strip-drawing.ts';

const GAP = 26;
const ROW_GAP = 8;
/** Points that a profile may be high. */
const PROFILE = 62;
/** A strip is at least this wide, in sizes of the lettering. */
const LEAST_WIDTH = 55;

const NOTE =
  'Each run unrolled from its panel: plan distance to the right, elevation above grade up. Beside each conduit its size, in brackets how many circuits lie in it. Dots are bends with their angle.';

/** The runs unrolled, several strips a sheet, in the order of the chargers; none where nothing has a run. */
export function stripSheets(job: Job): readonly Draft[] {
  const { site, plan, shape, lettering } = job;
  const strips = plan.runs.flatMap((run) => {
    const strip = runStrip(site, plan, run);
    return strip === null ? [] : [{ run, strip }];
  });
  if (strips.length === 0) return [];
  const { small } = lettering.sizes;
  const field: Area = { ...shape.field, height: shape.field.height - small * LEADING - 8 };
  const { columns, rows, width, height, frame } = layoutOf(
    job,
    strips.map(({ strip }) => strip),
    field,
  );
  const step = Math.min(height * 1.3, (field.height + ROW_GAP) / rows);
  // Over all sheets alike, rather than the first full and the last nearly empty.
  const sheets = Math.ceil(strips.length / (rows * columns));
  const begins = (sheet: number): number => Math.ceil((sheet * strips.length) / sheets);
  const changed = changedStrips(job, strips, { ...field, width, height }, frame);
  return Array.from({ length: sheets }, (_, i): Draft => {
    const mine = strips.slice(begins(i), begins(i + 1));
    return {
      key: `strips ${i + 1}`,
      series: 'E-2',
      title: titleOf(mine.map(({ run }) => run)),
      scale: `${frame.along.says} along, ${frame.up.says} up`,
      draw: (pen) => {
        pen.text(NOTE, [field.x, field.y + field.height + 6], { size: small });
        mine.forEach(({ run, strip }, k) => {
          const [column, row] = [Math.floor(k / rows), k % rows];
          const area: Area = {
            x: field.x + column * (width + GAP),
            y: field.y + field.height - height - row * step,
            width,
            height,
          };
          drawStrip(pen, area, site, plan, run, strip, frame);
          if (changed.has(run.charger))
            drawSmallDelta(pen, [area.x + width + 1.5, top(area) - small * LEADING], job.revision!.number);
        });
      },
    };
  });
}

/** Chargers whose strips say something else than in the version before, or were not there. */
function changedStrips(
  { site, plan, lettering, revision }: Job,
  strips: readonly { readonly run: Run; readonly strip: RunStrip }[],
  area: Area,
  frame: StripFrame,
): ReadonlySet<string> {
  if (!revision) return new Set();
  const earlier = revision.earlier();
  const runs = new Map(earlier.plan.runs.map((run) => [run.charger, run]));
  const changed = strips.filter(({ run, strip }) => {
    const was = runs.get(run.charger);
    const before = was && runStrip(earlier.site, earlier.plan, was);
    if (!was || !before) return true;
    const now = wordsDrawn(lettering, (pen) => drawStrip(pen, area, site, plan, run, strip, frame));
    return now !== wordsDrawn(lettering, (pen) => drawStrip(pen, area, earlier.site, earlier.plan, was, before, frame));
  });
  return new Set(changed.map(({ run }) => run.charger));
}

interface Layout {
  readonly columns: number;
  readonly rows: number;
  readonly width: number;
  readonly height: number;
  readonly frame: StripFrame;
}

/** Room for a profile of few runs, points, and the largest scale along that they are drawn to. */
const HANDFUL = { profile: 460, largest: 24 };
const FEW = { profile: 260, largest: 48 };
const MANY = { profile: PROFILE, largest: 96 };

/** As many strips to a sheet as go on it; where one sheet has room for all, as large as they go on it. */
function layoutOf(job: Job, strips: readonly RunStrip[], field: Area): Layout {
  const { small } = job.lettering.sizes;
  const most = Math.max(1, Math.floor((field.width + GAP) / (LEAST_WIDTH * small + GAP)));
  const laid = (columns: number, { profile, largest }: typeof FEW): Layout => {
    const width = (field.width - (columns - 1) * GAP) / columns;
    const frame = frameOf(job, strips, width, largest, profile);
    const height = stripHeight(frame, small);
    const rows = Math.max(1, Math.floor((field.height + ROW_GAP) / (height + ROW_GAP)));
    return { columns, rows, width, height, frame };
  };
  const usual = laid(most, MANY);
  const goesOn = ({ columns, rows }: Layout): boolean => strips.length <= columns * rows;
  if (!goesOn(usual)) return usual;
  for (const size of [HANDFUL, FEW, { profile: 160, largest: 64 }, MANY])
    for (let columns = 1; columns <= most; columns++) {
      const tried = laid(columns, size);
      if (goesOn(tried)) return evened(tried, strips.length);
    }
  return usual;
}

/** Strips over all columns alike, rather than the first column full and the last empty. */
const evened = (layout: Layout, count: number): Layout => ({ ...layout, rows: Math.ceil(count / layout.columns) });

/** One pair of scales for all strips, so that they compare: no larger up than along. */
function frameOf(
  { site }: Job,
  strips: readonly RunStrip[],
  width: number,
  largest: number,
  profile: number,
): StripFrame {
  const ends = strips.map(({ points, retractor }) => Math.max(points.at(-1)!.along, retractor?.along ?? 0));
  const heights = strips
    .flatMap(({ points, retractor }) => [...points, ...(retractor === null ? [] : [retractor])])
    .map(({ z }) => z);
  const low = heights.reduce((least, z) => Math.min(least, z), 0);
  const high = heights.reduce((most, z) => Math.max(most, z), 1);
  const longest = ends.reduce((most, end) => Math.max(most, end), 1);
  const room = { width: width - STRIP_SIDES.left - STRIP_SIDES.right, height: Infinity };
  const along = scaleThatFits(site.units, { width: longest, height: 0 }, room, largest);
  const up =
    scalesOf(site.units).find(
      (scale) => scale.ratio >= along.ratio && (high - low) * pointsPerFoot(scale) <= profile,
    ) ?? along;
  return { along, up, low, high };
}

const titleOf = (runs: readonly Run[]): string =>
  runs.length === 1 ? `Run strip, ${runs[0]!.charger}` : `Run strips, ${runs[0]!.charger} to ${runs.at(-1)!.charger}`;

/** All words that something draws, in the order of their letters: what tells whether a revision changed it. */
export function wordsDrawn(lettering: Lettering, draw: (pen: Pen) => void): string {
  const words: string[] = [];
  draw({ ...penWith(lettering), text: (text) => words.push(text) });
  return words.sort().join('\n');
}
