import fc from 'fast-check';
import { DEVICE_PLACES } from '../../../../routing/site/schema/vocabulary.ts';
import { chargers, equipment, feeder, load, type Parts, source } from '../small-site.ts';

/** Supplies of boards and transformers with chargers and loads, devices anywhere, some of it standing already. */
export const anySupply: fc.Arbitrary<Parts> = fc
  .array(
    fc.record({
      kind: fc.constantFrom('panelboard', 'switchboard', 'transformer', 'disconnect'),
      under: fc.nat(),
      loose: fc.nat(5),
      main: fc.option(fc.constantFrom(100, 200), { nil: undefined }),
      device: fc.option(fc.constantFrom(...DEVICE_PLACES), { nil: undefined }),
      existing: fc.boolean(),
      breakerAmps: fc.constantFrom(60, 100, 200),
      cars: fc.nat(3),
      va: fc.option(fc.constantFrom(1200, 9000), { nil: undefined }),
    }),
    { minLength: 1, maxLength: 6 },
  )
  .map((list): Parts => {
    const ids = ['SVC', ...list.map((_, i) => `E${i}`)];
    return {
      equipment: [
        source(208),
        ...list.map(({ kind, main }, i) =>
          equipment(
            `E${i}`,
            kind,
            kind === 'transformer' ? { kva: 45 } : { volts: 208, ...(main === undefined ? {} : { mainAmps: main }) },
          ),
        ),
      ],
      feeders: list.flatMap(({ under, loose, device, existing, breakerAmps }, i) => {
        const from = ids[under % (i + 1)]!;
        const rest = { existing, breakerAmps, ...(device === undefined ? {} : { device }) };
        return loose === 0 ? [] : [feeder(from, `E${i}`, rest)];
      }),
      chargers: list.flatMap(({ cars }, i) => chargers(`E${i}`, cars)),
      loads: list.flatMap(({ va }, i) => (va === undefined ? [] : [load(`E${i}`, `L${i}`, { va })])),
    };
  });
