import type { CDPSession, Page } from 'playwright-core';
import { scriptByFrame } from './script-time.ts';

/** A place in the window, pixels. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Times of one gesture, milliseconds. */
export interface FrameTimes {
  /** Median and 95th percentile of the time between frames, which cannot be under 16.7. */
  readonly median: number;
  readonly p95: number;
  /** Script time in a frame, median: all that the page's own code runs, garbage collection with it. */
  readonly script: number;
  readonly frames: number;
}

/** Times of each gesture: the whole lot panned and zoomed, a part of it panned from near, and there a drop dragged. */
export interface BoardTimes {
  readonly pan: FrameTimes;
  readonly zoom: FrameTimes;
  readonly near: FrameTimes;
  /** A few feet to and fro, so that its run stays. */
  readonly nudge: FrameTimes;
  /** Off its raceway and back: its run goes and comes, and with it the load of all that feeds it. */
  readonly drag: FrameTimes;
}

/** The window, at one device pixel to a pixel. */
export const VIEW = { width: 1600, height: 900 };
/** Pixels to a foot at which a drop is dragged: a hand can take it there, and its name and margins are lettered. */
export const DRAG_SCALE = 6.6;

/** Twice round a circle that begins and ends in a spot. */
export const around =
  ({ x, y }: Spot, radius: number) =>
  (t: number): Spot => ({
    x: x + radius * (1 - Math.cos(4 * Math.PI * t)),
    y: y + radius * Math.sin(4 * Math.PI * t),
  });

/** Movements of the hand in one gesture: one for each frame of two seconds. */
const STEPS = 120;
const FRAME = 1000 / 60;

/**
 * Presses at a spot and goes where `path` leads in even steps (0 to 1). The hand lets go after the clock has stopped:
 * that is one edit, and no frame of the drag.
 */
export async function dragged(page: Page, path: (t: number) => Spot, button: 'left' | 'middle'): Promise<FrameTimes> {
  const session = await page.context().newCDPSession(page);
  const send = (type: 'mousePressed' | 'mouseMoved' | 'mouseReleased', t: number): Promise<unknown> =>
    session.send('Input.dispatchMouseEvent', {
      type,
      ...path(t),
      button,
      buttons: type === 'mouseReleased' ? 0 : button === 'left' ? 1 : 4,
      clickCount: type === 'mouseMoved' ? 0 : 1,
    });
  await session.send('Input.dispatchMouseEvent', { type: 'mouseMoved', ...path(0) });
  await send('mousePressed', 0);
  const times = await timed(page, () => paced((i) => send('mouseMoved', i / STEPS)));
  await send('mouseReleased', 1);
  await session.detach();
  await page.waitForTimeout(1000);
  return times;
}

/** Turns the wheel over a spot: in for the first half, out again for the second. */
export const wheeled = (page: Page, at: Spot, delta: number): Promise<FrameTimes> =>
  timed(page, async (session) => {
    await paced((i) =>
      session.send('Input.dispatchMouseEvent', {
        type: 'mouseWheel',
        ...at,
        deltaX: 0,
        deltaY: i <= STEPS / 2 ? -delta : delta,
      }),
    );
  });

/** Sends one event a frame without waiting for the page, as a hand does. */
async function paced(send: (i: number) => Promise<unknown>): Promise<void> {
  const begun = performance.now();
  const sent: Promise<unknown>[] = [];
  for (let i = 1; i <= STEPS; i++) {
    const wait = begun + i * FRAME - performance.now();
    if (wait > 0) await new Promise((resolve) => setTimeout(resolve, wait));
    sent.push(send(i));
  }
  await Promise.all(sent);
}

async function timed(page: Page, gesture: (session: CDPSession) => Promise<void>): Promise<FrameTimes> {
  const session = await page.context().newCDPSession(page);
  const events: Parameters<typeof scriptByFrame>[0][number][] = [];
  session.on('Tracing.dataCollected', ({ value }) => events.push(...(value as unknown as typeof events)));
  const ended = new Promise((resolve) => session.once('Tracing.tracingComplete', resolve));
  await session.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: { includedCategories: ['devtools.timeline'], excludedCategories: ['*'] },
  });
  await page.evaluate(() => {
    const times: number[] = [];
    Object.assign(window, { frameTimes: times });
    const next = (time: number): void => {
      times.push(time);
      if ((window as { frameTimes?: number[] }).frameTimes === times) requestAnimationFrame(next);
    };
    requestAnimationFrame(next);
  });
  await gesture(session);
  const times = await page.evaluate(() => {
    const { frameTimes } = window as unknown as { frameTimes: number[] };
    Reflect.deleteProperty(window, 'frameTimes');
    return frameTimes;
  });
  await session.send('Tracing.end');
  await ended;
  await session.detach();
  const between = times.slice(1).map((time, i) => time - times[i]!);
  return {
    median: quantile(between, 0.5),
    p95: quantile(between, 0.95),
    script: quantile(scriptByFrame(events), 0.5),
    frames: between.length,
  };
}

function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}
