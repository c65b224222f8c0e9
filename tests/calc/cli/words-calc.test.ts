import { describe, expect, test } from 'vitest';
import { runWords } from '../../../calc/cli/words.ts';
import { machineWith } from './words-parts.ts';

describe('calc', () => {
  // NEC Chapter 9 Table 8: 8 AWG stranded uncoated copper, 0.778 ohm per 1,000 ft: 2 x 32 A x 0.150 x 0.778 = 7.4688 V.
  const wish = {
    phases: 1,
    volts: 208,
    amps: 32,
    length: 150,
    conductor: { size: '8', metal: 'copper' },
    method: 'resistance',
    raceway: 'steel',
    powerFactor: 1,
  };
  test('answers one line for each', async () => {
    const { status, out } = await runWords(
      ['calc', 'voltage-drop'],
      machineWith({}, `${JSON.stringify(wish)}\n\n${JSON.stringify({ ...wish, length: 300 })}\n`),
    );
    const answers = out
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(status).toBe(0);
    expect(answers[0].dropVolts).toBeCloseTo(7.4688, 6);
    expect(answers[1].dropVolts).toBeCloseTo(14.9376, 6);
  });
  test('--explain prints the steps with their sources', async () => {
    const { out } = await runWords(['calc', 'voltage-drop', '--explain'], machineWith({}, JSON.stringify(wish)));
    const { steps } = JSON.parse(out);
    expect(steps.length).toBeGreaterThan(0);
    for (const step of steps) {
      expect(step.formula).not.toBe('');
      expect(step.source).not.toBe('');
    }
  });
  test('names the line and place of what is wrong, and answers nothing', async () => {
    const { status, out, err } = await runWords(
      ['calc', 'voltage-drop'],
      machineWith({}, `${JSON.stringify(wish)}\n{"phases": 2}\nnot json\n`),
    );
    expect([status, out]).toEqual([2, '']);
    expect(err).toMatch(/line 2: method: missing/);
    expect(err).toMatch(/line 3: not JSON/);
  });
});
