import fc from 'fast-check';
import type { DropCircuit } from '../../../calc/circuits/voltage-drop.ts';

export const metals = fc.constantFrom('copper' as const, 'aluminum' as const);
const conductors = fc.record({
  size: fc.constantFrom('12', '10', '8', '6', '4', '2', '1/0', '4/0', '350', '600', '1000'),
  metal: metals,
  sets: fc.integer({ min: 1, max: 4 }),
});
const ways = fc.oneof(
  fc.constant({ method: 'resistance' as const }),
  fc.record({
    method: fc.constantFrom('impedance' as const, 'exact' as const),
    raceway: fc.constantFrom('PVC' as const, 'aluminum' as const, 'steel' as const),
    powerFactor: fc.double({ min: 0.8, max: 1, noNaN: true }),
  }),
);
export const circuits: fc.Arbitrary<DropCircuit> = fc
  .tuple(
    ways,
    fc.record({
      phases: fc.constantFrom(1 as const, 3 as const),
      volts: fc.constantFrom(120, 208, 240, 277, 480),
      amps: fc.double({ min: 1, max: 80, noNaN: true }),
      conductor: conductors,
    }),
  )
  .map(([way, rest]) => ({ ...way, ...rest }));

export const fraction = fc.double({ min: 0.01, max: 1, noNaN: true });
