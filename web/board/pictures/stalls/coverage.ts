import { type CoverageStep, coverageStep } from '../../../../calc/plan/stall-coverage.ts';
import { addTo } from '../../../../routing/lists/grouping.ts';
import type { StallMark } from '../../kinds/stalls.ts';
import { lettering } from '../../painting/ink.ts';
import type { BoardPen, Frame } from '../frame.ts';
import { hatch, traceOutline } from '../outline.ts';

const PATTERN_FROM = 8;
const WORDS_FROM = 26;

/** Pixels between the slanting lines of a step, and whether they cross; what has none is plain. */
const PATTERN: Readonly<Record<CoverageStep, { readonly step: number; readonly crossed: boolean } | null>> = {
  unserved: null,
  none: { step: 9, crossed: true },
  'under half': { step: 7, crossed: false },
  'half and over': { step: 18, crossed: false },
  all: null,
};

/** Shades every stall by how much of its cases a cord reaches, with its number and its percentage. */
export function drawCoverage(
  pen: BoardPen,
  frame: Frame,
  marks: readonly StallMark[],
  coverage: ReadonlyMap<string, number>,
): void {
  const { ink, scale, left, top } = frame;
  const steps = new Map<CoverageStep, StallMark[]>();
  for (const mark of marks) {
    const step = coverageStep(coverage.get(mark.stall.id));
    addTo(steps, step, mark);
  }
  const fills = {
    unserved: ink.sheet,
    none: ink.cover0,
    'under half': ink.cover1,
    'half and over': ink.cover2,
    all: ink.cover3,
  };
  for (const [step, own] of steps) {
    pen.beginPath();
    for (const { corners } of own) traceOutline(pen, frame, corners);
    pen.fillStyle = fills[step];
    pen.fill();
    const pattern = PATTERN[step];
    if (pattern && (own[0]?.stall.width ?? 0) * scale >= PATTERN_FROM)
      hatch(pen, frame, step === 'half and over' ? ink.coverOnSoft : ink.coverOnStrong, pattern.step, pattern.crossed);
  }
  if (scale < 1.2) return;
  pen.beginPath();
  for (const { corners } of marks) traceOutline(pen, frame, corners);
  pen.strokeStyle = ink.stripe;
  pen.lineWidth = 1;
  pen.stroke();
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  for (const [step, own] of steps)
    for (const { stall, label, labelAt } of own) {
      if (stall.width * scale < Math.max(WORDS_FROM, label.length * 8)) continue;
      const x = left + labelAt[0] * scale;
      const y = top - labelAt[1] * scale;
      const strong = step === 'none' || step === 'under half';
      // Inward from the number, which stands at the head.
      const second = y - (Math.sign(labelAt[1] - stall.at[1]) || 1) * 15;
      const share = coverage.get(stall.id);
      const words = share === undefined ? 'none' : `${Math.floor(share * 100 + 1e-9)}%`;
      // On a pattern the words stand on a ground of their own, or the lines would run through them.
      pen.font = lettering(12, 700);
      const width = Math.max(pen.measureText(label).width, pen.measureText(words).width) + 8;
      pen.fillStyle = fills[step];
      const room = stall.width * scale - 4;
      if (PATTERN[step]) pen.fillRect(x - width / 2, Math.min(y, second) - 8, width, 31);
      pen.fillStyle = step === 'unserved' ? ink.ink : strong ? ink.coverOnStrong : ink.coverOnSoft;
      pen.fillText(label, x, y);
      pen.font = lettering(12);
      if (pen.measureText(words).width <= room) pen.fillText(words, x, second);
    }
}
