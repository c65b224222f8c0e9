import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { FaultAmps } from '../../../../calc/plan-file/supply.ts';
import { type FaultStep, faultChain } from '../../../../calc/supply/fault/fault-chain.ts';
import { NEC_2023 } from '../../../../calc/tables/nec-2023/nec-2023.ts';
import type { Equipment } from '../../../../routing/site/site.ts';
import { feeder, type Parts, panel, siteOf, source, supplied, transformer } from '../small-site.ts';
import { AS_PRINTED, of, utility } from './fault-parts.ts';

describe('fault current from the figure of the source', () => {
  test('is that of the chain of single steps, whatever there is', () => {
    const place = fc.record({
      amps: fc.integer({ min: 2000, max: 100_000 }),
      xr: fc.option(fc.double({ min: 0, max: 20, noNaN: true }), { nil: undefined }),
      first: fc.integer({ min: 1, max: 500 }),
      second: fc.integer({ min: 1, max: 500 }),
      sets: fc.integer({ min: 1, max: 3 }),
      percent: fc.double({ min: 1, max: 8, noNaN: true }),
      phases: fc.constantFrom(1, 3),
    });
    fc.assert(
      fc.property(place, ({ amps, xr, first, second, sets, percent, phases }) => {
        const one = phases === 1;
        const secondaryVolts = one ? 240 : 208;
        const own = { impedancePercent: percent, phases, secondaryVolts } as const;
        const conductor = { size: '3/0', metal: 'copper', sets, insulation: 'XHHW-2' } as const;
        const parts: Parts = {
          rules: AS_PRINTED,
          equipment: [
            utility({ faultAmps: amps, ...(xr === undefined ? {} : { faultXr: xr }) }),
            transformer('T', own as Partial<Equipment>),
            panel('P', { volts: secondaryVolts, phases } as Partial<Equipment>),
          ],
          feeders: [
            feeder('SVC', 'T', { length: first, conductor }),
            feeder('T', 'P', { length: second, raceway: 'RMC' }),
          ],
        };
        const wire = { size: '3/0', metal: 'copper' } as const;
        const steps: FaultStep[] = [
          { kind: 'source', faultAmps: amps, volts: 480, xr },
          {
            kind: 'conductor',
            length: first,
            volts: 480,
            phases: 3,
            conductor: { ...wire, sets },
            raceway: 'nonmagnetic',
          },
          { kind: 'transformer', kva: 150, secondaryVolts, phases: one ? 1 : 3, impedancePercent: percent, xr: 2 },
          {
            kind: 'conductor',
            length: second,
            volts: secondaryVolts,
            phases: one ? 1 : 3,
            conductor: wire,
            raceway: 'steel',
          },
        ];
        const places = faultChain(NEC_2023, { steps, method: 'impedance' });
        expect(of(parts, 'T')!).toBeCloseTo(places[2]!.amps!, 4);
        expect(of(parts, 'P')!).toBeCloseTo(places[3]!.amps!, 4);
      }),
      { numRuns: 40 },
    );
  });

  test('falls along any path, and a larger conductor never lowers it', () => {
    const sizes = ['1/0', '2/0', '3/0', '4/0', '250', '300', '350', '400', '500', '600'];
    const leg = fc.record({
      size: fc.integer({ min: 0, max: sizes.length - 1 }),
      length: fc.integer({ min: 1, max: 600 }),
      raceway: fc.constantFrom('PVC40' as const, 'RMC' as const),
      metal: fc.constantFrom('copper' as const, 'aluminum' as const),
    });
    const supply = fc.record({
      volts: fc.constantFrom(208, 480, 240),
      amps: fc.integer({ min: 3000, max: 90_000 }),
      xr: fc.double({ min: 0.2, max: 15, noNaN: true }),
    });
    fc.assert(
      fc.property(supply, fc.array(leg, { minLength: 2, maxLength: 4 }), fc.nat(3), ({ volts, amps, xr }, legs, at) => {
        const faults = (grown: number) => {
          const names = legs.map((_, i) => `P${i}`);
          const parts: Parts = {
            equipment: [
              { ...source(volts), faultAmps: amps, faultXr: xr },
              ...names.map((name) => panel(name, { volts })),
            ],
            feeders: legs.map(({ size, length, raceway, metal }, i) =>
              feeder(names[i - 1] ?? 'SVC', names[i]!, {
                length,
                raceway,
                conductor: {
                  size: sizes[Math.min(sizes.length - 1, size + (i === at % legs.length ? grown : 0))]!,
                  metal,
                  sets: 1,
                  insulation: 'XHHW-2',
                },
              }),
            ),
          };
          return supplied(siteOf(parts)).supply.equipment.map(({ fault }) => fault!);
        };
        const as = faults(0);
        const figures = ({ most, lineToNeutral = 0, least }: FaultAmps): readonly number[] => [
          most,
          lineToNeutral,
          least.lineToLine,
          least.lineToGround ?? 0,
        ];
        as.slice(1).forEach((fault, i) => {
          figures(fault).forEach((one, j) => {
            expect(one).toBeLessThanOrEqual(figures(as[i]!)[j]!);
          });
        });
        faults(1).forEach((fault, i) => {
          figures(fault).forEach((one, j) => {
            expect(one).toBeGreaterThanOrEqual(figures(as[i]!)[j]! * (1 - 1e-12));
          });
        });
      }),
      { numRuns: 60 },
    );
  });
});
