/** One event of a browser's trace, times in microseconds. */
interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly ts: number;
  readonly dur?: number;
  readonly args?: { readonly name?: string };
}

/** What of a trace is script: everything the page's own code runs in, whoever called it. */
const SCRIPT = new Set([
  'FunctionCall',
  'EvaluateScript',
  'FireAnimationFrame',
  'TimerFire',
  'EventDispatch',
  'RunMicrotasks',
  'v8.callFunction',
  'MinorGC',
  'MajorGC',
  'V8.GCScavenger',
]);

/**
 * Script time of each frame on the page's main thread, milliseconds: the length of the union of its script events from
 * one frame's drawing to the next.
 *
 * @param events a trace with the category `devtools.timeline`
 */
export function scriptByFrame(events: readonly TraceEvent[]): readonly number[] {
  const main = mainThread(events);
  const own = events.filter(({ pid, tid }) => pid === main?.pid && tid === main.tid);
  const frames = framesOf(own);
  const spans = own
    .filter(({ name, ph, dur }) => SCRIPT.has(name) && ph === 'X' && dur !== undefined)
    .map(({ ts, dur }) => [ts, ts + dur!] as const)
    .sort((a, b) => a[0] - b[0]);
  const spent = frames.slice(0, -1).map(() => 0);
  let until = 0;
  let frame = 0;
  for (const [from, to] of spans) {
    const start = Math.max(from, until);
    if (to <= start) continue;
    until = to;
    while (frame < spent.length - 1 && start >= frames[frame + 1]!) frame++;
    if (frames.length > 1 && start >= frames[0]! && start < frames.at(-1)!) spent[frame]! += (to - start) / 1000;
  }
  return spent;
}

/** Microseconds after one callback of a frame within which another belongs to the same frame. */
const SAME_FRAME = 1000;

/** When each frame's drawing began: the first of the animation callbacks that follow one another without a pause. */
function framesOf(events: readonly TraceEvent[]): number[] {
  const starts: number[] = [];
  let end = Number.NEGATIVE_INFINITY;
  for (const { ts, dur = 0 } of events
    .filter(({ name }) => name === 'FireAnimationFrame')
    .sort((a, b) => a.ts - b.ts)) {
    if (ts - end > SAME_FRAME) starts.push(ts);
    end = ts + dur;
  }
  return starts;
}

/** The thread that ran most animation frames: another page, or the browser's own windows, may be in the trace. */
function mainThread(events: readonly TraceEvent[]): TraceEvent | undefined {
  const count = new Map<string, { event: TraceEvent; n: number }>();
  for (const event of events) {
    if (event.name !== 'FireAnimationFrame') continue;
    const key = `${event.pid} ${event.tid}`;
    const so = count.get(key);
    if (so) so.n++;
    else count.set(key, { event, n: 1 });
  }
  return [...count.values()].sort((a, b) => b.n - a.n)[0]?.event;
}
