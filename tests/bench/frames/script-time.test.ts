import { expect, test } from 'vitest';
import { scriptByFrame } from './script-time.ts';

const on = (tid: number, name: string, from: number, to: number) => ({
  name,
  ph: 'X',
  pid: 1,
  tid,
  ts: from * 1000,
  dur: (to - from) * 1000,
});
const frame = (at: number) => on(7, 'FireAnimationFrame', at, at + 2);

test('script is counted once however it is nested, in the frame in which it began, on the page thread alone', () => {
  const events = [
    frame(0),
    on(7, 'FunctionCall', 0.5, 1.5),
    on(7, 'EventDispatch', 5, 9),
    on(7, 'FunctionCall', 6, 8),
    on(7, 'MinorGC', 8.5, 10),
    on(7, 'Layout', 10, 15),
    on(8, 'FunctionCall', 3, 16),
    frame(16),
    on(7, 'FireAnimationFrame', 18.2, 19.2),
    frame(32),
  ];
  expect(scriptByFrame(events)).toEqual([2 + 5, 2 + 1]);
});

test('a trace without frames has none', () => {
  expect(scriptByFrame([])).toEqual([]);
});
