import type { UnitCurrent } from '../simulated/phasors.ts';
import type { World } from '../simulated/world.ts';
import { type Columns, columnsOf } from './columns.ts';
import { type Chord, firstChords, isFine, split } from './cone.ts';
import type { LinearProgram, LinearRow, LinearSolution, NewLinearProgram } from './linear-program.ts';

const FREE = Number.POSITIVE_INFINITY;

interface LaidChord {
  readonly chord: Chord;
  readonly row: number;
  readonly step: number;
  readonly inProgram: number;
}

/** What a schedule asks of the limit that is looked for: the column of its figure, in place of a room that stands. */
interface FreeLimit {
  readonly limit: number;
  readonly column: number;
}

/**
 * The linear program of a day: an unknown for each car and step, needs, shared cords, and for each row of a limit and step
 * a polygon inside its circle, so that each answer keeps the limits.
 */
export class Schedule {
  readonly columns: Columns;
  readonly program: LinearProgram;
  readonly needRow: Int32Array;
  private readonly world: World;
  private readonly cordRow: number;
  private readonly free: FreeLimit | null;
  private chords: LaidChord[] = [];

  constructor(world: World, newProgram: NewLinearProgram, freeLimit = -1) {
    this.world = world;
    this.columns = columnsOf(world);
    this.program = newProgram();
    const { car, ofCar, shared } = this.columns;
    const { max, kwh, need } = world;
    this.program.addColumns(
      Array.from(car, () => 0),
      Array.from(car, (one) => max[one]!),
    );
    this.free =
      freeLimit < 0
        ? null
        : { limit: freeLimit, column: this.program.addColumns([leastFigure(world, freeLimit)], [FREE]) };
    const needs = ofCar.map((at, i): LinearRow => ({ lower: 0, upper: need[i]!, at, by: at.map(() => kwh[i]!) }));
    const first = this.program.addRows(needs);
    this.needRow = Int32Array.from(needs, (_, i) => first + i);
    this.cordRow = this.program.addRows(
      shared.map(({ columns }) => ({
        lower: -FREE,
        upper: 1,
        at: columns,
        by: columns.map((column) => 1 / max[car[column]!]!),
      })),
    );
    this.layFirst();
  }

  /** The price of a row of limits is the sum of its chords' prices, each in the direction of its middle. */
  rowPrices({ prices }: LinearSolution): { re: Float64Array; im: Float64Array }[] {
    const { rows, window } = this.world;
    const sums = rows.map(() => ({ re: new Float64Array(window.steps), im: new Float64Array(window.steps) }));
    for (const { chord, row, step, inProgram } of this.chords) {
      const price = Math.max(0, -prices[inProgram]!);
      const sum = sums[row]!;
      sum.re[step] = sum.re[step]! + price * chord.normal[0];
      sum.im[step] = sum.im[step]! + price * chord.normal[1];
    }
    return sums;
  }

  cordPrices({ prices }: LinearSolution): Float64Array {
    return Float64Array.from(this.columns.shared, (_, i) => Math.max(0, -prices[this.cordRow + i]!));
  }

  needPrices({ prices }: LinearSolution): Float64Array {
    return Float64Array.from(this.needRow, (row) => Math.max(0, -prices[row]!));
  }

  /** Kilowatt-hours of each car. */
  got({ columns }: LinearSolution): Float64Array {
    const got = new Float64Array(this.world.charger.length);
    this.columns.car.forEach((car, column) => {
      got[car] = got[car]! + columns[column]! * this.world.kwh[car]!;
    });
    return got;
  }

  /** Two chords in the place of each that has a price; how many were split. */
  refine({ columns, prices }: LinearSolution): number {
    const kept: LaidChord[] = [];
    const fresh: Omit<LaidChord, 'inProgram'>[] = [];
    for (const laid of this.chords) {
      const { chord, row, step, inProgram } = laid;
      if (Math.max(0, -prices[inProgram]!) <= 1e-9 || isFine(chord)) kept.push(laid);
      else {
        this.program.freeRow(inProgram);
        for (const half of split(chord, this.sumOf(row, step, columns))) fresh.push({ chord: half, row, step });
      }
    }
    this.chords = [...kept, ...this.lay(fresh)];
    return fresh.length / 2;
  }

  private sumOf(row: number, step: number, columns: Float64Array): UnitCurrent {
    let [re, im] = [0, 0];
    for (const column of this.columns.ofStep[step]!) {
      const touch = this.world.touch[this.columns.car[column]!]!;
      const j = touch.rows.indexOf(row);
      if (j < 0) continue;
      re += touch.re[j]! * columns[column]!;
      im += touch.im[j]! * columns[column]!;
    }
    return [re, im];
  }

  private layFirst(): void {
    const { rows, touch, window } = this.world;
    const fresh: Omit<LaidChord, 'inProgram'>[] = [];
    rows.forEach((_, row) => {
      for (let step = 0; step < window.steps; step++) {
        const phasors = new Map<string, UnitCurrent>();
        for (const column of this.columns.ofStep[step]!) {
          const { rows: touched, re, im } = touch[this.columns.car[column]!]!;
          const j = touched.indexOf(row);
          if (j >= 0) phasors.set(`${re[j]} ${im[j]}`, [re[j]!, im[j]!]);
        }
        if (phasors.size > 0) for (const chord of firstChords([...phasors.values()])) fresh.push({ chord, row, step });
      }
    });
    this.chords = this.lay(fresh);
  }

  private lay(fresh: readonly Omit<LaidChord, 'inProgram'>[]): LaidChord[] {
    const first = this.program.addRows(
      fresh.map(({ chord: { normal, far }, row, step }): LinearRow => {
        const [at, by]: [number[], number[]] = [[], []];
        for (const column of this.columns.ofStep[step]!) {
          const touch = this.world.touch[this.columns.car[column]!]!;
          const j = touch.rows.indexOf(row);
          if (j < 0) continue;
          at.push(column);
          by.push(normal[0] * touch.re[j]! + normal[1] * touch.im[j]!);
        }
        const { room, other, limit } = this.world.rows[row]!;
        if (this.free?.limit !== limit) return { lower: -FREE, upper: far * room[step]!, at, by };
        return { lower: -FREE, upper: -far * other[step]!, at: [...at, this.free.column], by: [...by, -far] };
      }),
    );
    return fresh.map((one, i) => ({ ...one, inProgram: first + i }));
  }
}

/** A limit may not be under what else draws on it. */
export const leastFigure = ({ rows }: World, limit: number): number =>
  rows.reduce((least, row) => (row.limit === limit ? row.other.reduce((a, b) => Math.max(a, b), least) : least), 0);
