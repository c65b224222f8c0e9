import { describe, expect, test } from 'vitest';
import type { Underlay } from '../../../../calc/sheets/pdf/kit/underlay.ts';
import { setOf } from './drawing-set.ts';
import { LIBRARY, onPlan, sitePlan } from './pdf-underlay-parts.ts';
import { placedOn, readPdf } from './read-pdf.ts';

/** Four pixels, two and two, red over blue. */
const PNG = Uint8Array.from(
  Buffer.from(
    'iVBORw0KGgoAAAANSUhEUgAAAAIAAAACCAIAAAD91JpzAAAAEUlEQVR4nGP4z8AARAxg8j8AG/ID/fPnS7EAAAAASUVORK5CYII=',
    'base64',
  ),
);

describe('several underlays', () => {
  const below = { x: -10, y: -30, scale: 0.1, rotation: 10 };
  const picture = { x: 5, y: -12, scale: 0.25, rotation: 215 };
  const above = { x: 3, y: -20, scale: 0.05, rotation: -90 };
  const laid = async (): Promise<Underlay[]> => [
    { kind: 'pdf', bytes: await sitePlan(), page: 1, placement: below, dim: 0.2 },
    { kind: 'png', bytes: PNG, size: [80, 40], placement: picture },
    { kind: 'pdf', bytes: await sitePlan(), page: 1, placement: { ...below, x: 0 }, dim: 1 },
    { kind: 'pdf', bytes: await sitePlan({ turn: 90 }), page: 1, placement: above, dim: 0.7 },
  ];

  test('lie over one another in their order, each where it is placed, turned, and dimmed as the board dims it', async () => {
    const bytes = await setOf(LIBRARY, { underlays: await laid() });
    const pdf = await readPdf(bytes);
    const at = pdf.pages.findIndex(({ label }) => label === 'E-101');
    const placed = await placedOn(bytes, at + 1);
    expect(placed.map(({ kind, alpha }) => [kind, Number(alpha.toFixed(6))])).toEqual([
      ['form', 0.8],
      ['picture', 0.5],
      ['form', 0.3],
    ]);
    const [ox, oy] = onPlan(pdf, [0, 0]);
    const perFoot = onPlan(pdf, [1, 0])[0] - ox;
    const placements = [below, picture, above];
    const sizes = [
      [1, 1],
      [80, 40],
      [1, 1],
    ] as const;
    placed.forEach(({ matrix }, i) => {
      const { x, y, scale, rotation } = placements[i]!;
      const [w, h] = sizes[i]!;
      const turn = (rotation * Math.PI) / 180;
      const unit = scale * perFoot;
      const wanted = [
        unit * w * Math.cos(turn),
        unit * w * Math.sin(turn),
        -unit * h * Math.sin(turn),
        unit * h * Math.cos(turn),
        ox + x * perFoot,
        oy + y * perFoot,
      ];
      matrix.forEach((value, k) => {
        expect(value).toBeCloseTo(wanted[k]!, k < 4 ? 1 : 0);
      });
    });
    const kerbs = pdf.pages[at]!.texts.filter(({ text }) => text === 'KERB').map(
      ({ turn }) => Math.round(turn + 360) % 360,
    );
    expect(kerbs).toEqual([10, 180]);
  });

  test('one that cannot be placed is named, and the others lie', async () => {
    const [first, second, , last] = (await laid()) as [Underlay, Underlay, Underlay, Underlay];
    const bytes = await setOf(LIBRARY, {
      underlays: [
        { ...first, bytes: new Uint8Array([37, 80]), file: 'kerbs.pdf' },
        { ...second, bytes: PNG.slice(0, 40), file: 'aerial.png' },
        last,
      ],
    });
    const pdf = await readPdf(bytes);
    const cover = pdf.pages[0]!.texts.map(({ text }) => text).join(' ');
    expect(cover).toContain('The underlay is left out: kerbs.pdf');
    expect(cover).toContain('The underlay is left out: aerial.png');
    const at = pdf.pages.findIndex(({ label }) => label === 'E-101');
    expect((await placedOn(bytes, at + 1)).map(({ kind }) => kind)).toEqual(['form']);
  });

  test.each([
    ['a dim over 1', { dim: 1.5 }],
    ['a dim that is no number', { dim: Number.NaN }],
    ['a picture of no width', { size: [0, 4] as const }],
  ])('%s is a fault of the program', async (_, fault) => {
    const [, second] = await laid();
    await expect(setOf(LIBRARY, { underlays: [{ ...second!, ...fault } as Underlay] })).rejects.toThrow(RangeError);
  });
});
