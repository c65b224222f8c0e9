import type { FeederProspect } from '../supply/feeders/feeder-prospects.ts';

/** Ratings of chargers that are looked at, A: 80 % of breakers of 20 to 60 A (625.41, 625.42). */
export const SIZES = [16, 24, 32, 40, 48] as const;

/** One way to use a standing feeder with chargers of some rating. */
export interface FeederChoice {
  readonly amps: number;
  readonly way: FeederProspect;
  /** The transformer stands apart from the board, or in one enclosure with it; null without one. */
  readonly transformer: 'apart' | 'in the board' | null;
  /** Chargers that are on it; null for all. */
  readonly only: number | null;
  /** Drawn for every mount, not for the first alone. */
  readonly isMain: boolean;
}

/** What a feeder can carry, by the rating of the chargers. */
export type WaysBySize = ReadonlyMap<number, readonly FeederProspect[]>;

/** How many ways there are to use a feeder in all: each with a transformer stands apart or in the board. */
export const choicesIn = (ways: readonly FeederProspect[]): number =>
  ways.reduce((sum, { kva }) => sum + (kva === null ? 1 : 2), 0);

/**
 * The ways to use a standing feeder that are worth drawing, of all voltages, transformers and ratings. As it is: under a
 * shared limit, with so many chargers as run at full rate, and with the largest of which all do. At higher volts straight
 * to the chargers, below the lowest voltage at which all run at full rate. There with the least transformer behind which
 * they do and the next larger, apart and in the board, and the larger with the largest chargers that it carries at full
 * rate. More volts and more kVA than these give no car more.
 */
export function feederChoices(bySize: WaysBySize, amps: number): readonly FeederChoice[] {
  const ways = bySize.get(amps) ?? [];
  const now = ways.find(({ asItIs }) => asItIs);
  if (now === undefined) return [];
  const choice = (way: FeederProspect, more: Partial<FeederChoice> = {}): FeederChoice => ({
    amps,
    way,
    transformer: null,
    only: null,
    isMain: false,
    ...more,
  });
  const placed = now.kva === null ? null : 'apart';
  const choices = now.shared === null ? [] : [choice(now, { isMain: true, transformer: placed })];
  const largestFull = (of: (way: FeederProspect) => boolean, from: number): FeederChoice | null => {
    for (const size of SIZES.toReversed()) {
      const way = bySize.get(size)?.find(of);
      if (size !== amps && size >= from && way?.allAtFullRate)
        return choice(way, { amps: size, transformer: way.kva === null ? null : 'apart' });
    }
    return null;
  };
  const larger = largestFull(({ asItIs }) => asItIs, now.allAtFullRate ? amps : 0);
  if (larger) choices.push(larger);
  if (!now.allAtFullRate && now.atFullRate > 0)
    choices.push(choice({ ...now, managedAmps: null }, { only: now.atFullRate, transformer: placed }));
  const raised = raisedVolts(ways, now);
  for (const way of ways)
    if (way.kva === null && !way.asItIs && way.shared !== null && (raised === null || way.volts < raised))
      choices.push(choice(way));
  const behind = ways
    .filter(({ volts, kva, asItIs }) => volts === raised && kva !== null && !asItIs)
    .toSorted((a, b) => a.kva! - b.kva!);
  const at = behind.findIndex(({ allAtFullRate }) => allAtFullRate);
  const [least, next] = at < 0 ? mostOf(behind) : behind.slice(at, at + 2);
  // Where a transformer stands already, another one stands in its place.
  const places = now.kva === null ? (['apart', 'in the board'] as const) : (['apart'] as const);
  for (const transformer of places) {
    if (least) choices.push(choice(least, { transformer, isMain: transformer === 'apart' }));
    if (next) choices.push(choice(next, { transformer }));
  }
  const more = next && largestFull(({ volts, kva }) => volts === next.volts && kva === next.kva, amps);
  if (more) choices.push(more);
  return choices;
}

/** Chargers of high power are made for this and above, V line to line. Common practice, no source. */
const HIGH = 480;

/**
 * The voltage of the transformers that are looked at: the lowest at which all run at full rate, or most do, from that of
 * high-power chargers on where a standing feeder may have it; null where none lets more run than now.
 */
function raisedVolts(ways: readonly FeederProspect[], now: FeederProspect): number | null {
  const behind = ways.filter(({ kva, volts }) => kva !== null && volts <= Math.max(HIGH, now.volts));
  const high = behind.filter(({ volts }) => volts >= HIGH);
  const pool = high.length > 0 ? high : behind;
  const most = Math.max(0, ...pool.map(({ atFullRate }) => atFullRate));
  if (now.kva !== null && (now.allAtFullRate || most <= now.atFullRate)) return null;
  const full = pool.filter(({ allAtFullRate }) => allAtFullRate);
  return (full.length > 0 ? full : pool.filter(({ atFullRate }) => atFullRate === most && most > 0))[0]?.volts ?? null;
}

/** Where no transformer carries all: the smallest with which most run. */
function mostOf(behind: readonly FeederProspect[]): readonly FeederProspect[] {
  const most = Math.max(0, ...behind.map(({ atFullRate }) => atFullRate));
  return behind.filter(({ atFullRate }) => atFullRate === most && most > 0).slice(0, 1);
}
