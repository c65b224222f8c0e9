import { describe, expect, test } from 'vitest';
import {
  ambientFactor,
  ampacityAt,
  bundlingFactor,
  insulationColumn,
  rooftopAdderC,
  suitsWetPlaces,
} from '../../../calc/tables/ampacity-of.ts';
import {
  BARE,
  circularMils,
  conductorArea,
  conductorDiameter,
  FIXTURE_WIRE,
  findConductorArea,
  findImpedance,
  hasResistance,
  impedance,
  methodRaceway,
  resistance,
} from '../../../calc/tables/conductor-of.ts';
import { transformerProtection, workingSpaceDepth } from '../../../calc/tables/equipment-of.ts';
import { NEC_2023 as nec } from '../../../calc/tables/nec-2023/nec-2023.ts';
import {
  groundingSize,
  largestDeviceFor,
  smallConductorLimit,
  standardRatingAtLeast,
  standardRatingAtMost,
} from '../../../calc/tables/protection-of.ts';
import {
  bendRadius,
  coverInches,
  fillLimit,
  hasRaceway,
  racewayArea,
  racewayDiameter,
  supportSpacing,
  tradeSizes,
  verticalSupportSpacing,
} from '../../../calc/tables/raceway-of.ts';
import { isConductorSize, sizesUpFrom, tradeSizeInches, tradeSizeOf } from '../../../calc/tables/sizes.ts';

describe('sizes', () => {
  test('climb from AWG through the oughts to kcmil', () => {
    expect(sizesUpFrom('2').slice(0, 7)).toEqual(['2', '1', '1/0', '2/0', '3/0', '4/0', '250']);
  });
  test('that no table has are refused', () => {
    expect(isConductorSize('5')).toBe(false);
    expect(() => sizesUpFrom('5')).toThrow(RangeError);
  });
  test('of raceways are read as inches', () => {
    expect(['3/8', '1/2', '1', '1-1/4', '2-1/2', '6'].map(tradeSizeInches)).toEqual([0.375, 0.5, 1, 1.25, 2.5, 6]);
    expect(tradeSizeOf(3.5)).toBe('3-1/2');
    expect(tradeSizeOf(1.1)).toBeUndefined();
    expect(() => tradeSizeInches('7')).toThrow(RangeError);
  });
});

describe('ampacity', () => {
  test('is read by size, metal and column', () => {
    expect(ampacityAt(nec, '8', 'copper', 75)).toBe(50);
    expect(ampacityAt(nec, '4/0', 'aluminum', 90)).toBe(205);
    expect(ampacityAt(nec, '14', 'aluminum', 75)).toBeNull();
    expect(ampacityAt(nec, '5', 'copper', 75)).toBeNull();
  });
  test('column is that of the insulation in the wet inside of an outdoor raceway', () => {
    const columns = ['TW', 'THW', 'THWN', 'XHHW', 'THHN', 'THWN-2', 'XHHW-2', 'RHW-2', 'USE-2'].map((name) =>
      insulationColumn(nec, name),
    );
    expect(columns).toEqual([60, 75, 75, 75, 90, 90, 90, 90, 90]);
    expect(() => insulationColumn(nec, 'cotton')).toThrow(RangeError);
  });
  test('of THHN alone may not be had in a wet place', () => {
    expect(suitsWetPlaces(nec, 'THHN')).toBe(false);
    expect(suitsWetPlaces(nec, 'THWN-2')).toBe(true);
  });
  test('is corrected for ambient by the band it falls in, the hotter one between two', () => {
    expect(ambientFactor(nec, 90, 30)).toBe(1);
    expect(ambientFactor(nec, 90, 40)).toBe(0.91);
    expect(ambientFactor(nec, 90, 40.5)).toBe(0.87);
    expect(ambientFactor(nec, 75, -20)).toBe(1.2);
  });
  test('is nothing past the ambient table', () => {
    expect(ambientFactor(nec, 60, 56)).toBe(0);
    expect(ambientFactor(nec, 90, 86)).toBe(0);
  });
  test('is adjusted from the fourth conductor on', () => {
    const factors = [0, 1, 3, 4, 6, 7, 9, 10, 20, 21, 30, 31, 40, 41, 500].map((n) => bundlingFactor(nec, n));
    expect(factors).toEqual([1, 1, 1, 0.8, 0.8, 0.7, 0.7, 0.5, 0.5, 0.45, 0.45, 0.4, 0.4, 0.35, 0.35]);
  });
  test('on a roof in the sun is worked 33 °C hotter under 7/8 in., but for XHHW-2', () => {
    expect(rooftopAdderC(nec, 'THWN-2', 0.5)).toBe(33);
    expect(rooftopAdderC(nec, 'THWN-2', 0.875)).toBe(0);
    expect(rooftopAdderC(nec, 'XHHW-2', 0)).toBe(0);
  });
});

describe('protection', () => {
  test('goes up to the next standard rating, an exact one kept through rounding noise', () => {
    expect(standardRatingAtLeast(nec, 40)).toBe(40);
    expect(standardRatingAtLeast(nec, 40 * (1 + 1e-12))).toBe(40);
    expect(standardRatingAtLeast(nec, 40.01)).toBe(45);
    expect(standardRatingAtLeast(nec, 6001)).toBe(Infinity);
  });
  test('goes down to a standard rating, small fuses included', () => {
    expect(standardRatingAtMost(nec, 7.8, 'fuse')).toBe(6);
    expect(standardRatingAtMost(nec, 7.8, 'breaker')).toBeNull();
    expect(standardRatingAtMost(nec, 799, 'breaker')).toBe(700);
  });
  test('may be the next rating above the ampacity to 800 A and not beyond: 240.4(B), (C)', () => {
    expect(largestDeviceFor(nec, 75)).toBe(80);
    expect(largestDeviceFor(nec, 760)).toBe(800);
    expect(largestDeviceFor(nec, 900)).toBe(800);
    expect(largestDeviceFor(nec, 1000)).toBe(1000);
  });
  test('of small conductors has a limit of its own', () => {
    expect(smallConductorLimit(nec, '10', 'copper')).toBe(30);
    expect(smallConductorLimit(nec, '12', 'aluminum')).toBe(15);
    expect(smallConductorLimit(nec, '8', 'copper')).toBeNull();
  });
  test('asks for a grounding conductor by its rating', () => {
    expect(groundingSize(nec, 60, 'copper')).toBe('10');
    expect(groundingSize(nec, 61, 'copper')).toBe('8');
    expect(groundingSize(nec, 200, 'aluminum')).toBe('4');
    expect(groundingSize(nec, 10, 'copper')).toBe('14');
    expect(groundingSize(nec, 7000, 'copper')).toBe('800');
  });
});

describe('conductors', () => {
  test('have the circular mils of Table 8, and of their name above it', () => {
    expect(circularMils(nec, '8')).toBe(16510);
    expect(circularMils(nec, '4/0')).toBe(211600);
    expect(circularMils(nec, '1250')).toBe(1250000);
    expect(() => circularMils(nec, '0')).toThrow(RangeError);
  });
  test('have the resistance of stranded, uncoated copper or aluminum', () => {
    expect(resistance(nec, '10', 'copper')).toBe(1.24);
    expect(resistance(nec, '10', 'aluminum')).toBe(2.04);
    expect(hasResistance(nec, '1250')).toBe(false);
    expect(() => resistance(nec, '1250', 'copper')).toThrow(RangeError);
  });
  test('have the impedance of their raceway', () => {
    expect(impedance(nec, '1/0', 'copper', 'aluminum')).toEqual({ r: 0.13, x: 0.044 });
    expect(impedance(nec, '600', 'aluminum', 'PVC')).toEqual({ r: 0.036, x: 0.039 });
  });
  test('of a size that Table 9 skips take the next smaller row', () => {
    expect(impedance(nec, '700', 'copper', 'steel')).toEqual(impedance(nec, '600', 'copper', 'steel'));
    expect(impedance(nec, '2000', 'copper', 'steel')).toEqual(impedance(nec, '1000', 'copper', 'steel'));
  });
  test('too small for Table 9 have no impedance', () => {
    expect(findImpedance(nec, '16', 'copper', 'PVC')).toBeUndefined();
    expect(() => impedance(nec, '14', 'aluminum', 'PVC')).toThrow(RangeError);
  });
  test('take the room of their insulation, of a group, or of bare metal', () => {
    expect(conductorArea(nec, 'THWN-2', '8')).toBe(0.0366);
    expect(conductorArea(nec, 'THHN', '8')).toBe(0.0366);
    expect(conductorArea(nec, 'XHHW', '8')).toBe(0.0437);
    expect(conductorArea(nec, FIXTURE_WIRE, '18')).toBe(0.0055);
    expect(conductorArea(nec, BARE, '8')).toBe(0.017);
    expect(() => conductorArea(nec, 'THWN-2', '18')).toThrow(RangeError);
  });
  test('have diameters by the same names', () => {
    expect(conductorDiameter(nec, 'THHN', '2')).toBe(0.384);
    expect(conductorDiameter(nec, BARE, '8')).toBe(0.146);
    expect(() => conductorDiameter(nec, 'UF', '8')).toThrow(RangeError);
  });
  test('in every site-file insulation have an area', () => {
    for (const insulation of ['THWN-2', 'XHHW-2', 'THHN', 'THWN', 'XHHW', 'THW', 'TW', 'RHW-2', 'USE-2'])
      expect(findConductorArea(nec, insulation, '8'), insulation).toBeGreaterThan(0.03);
  });
});

describe('raceways', () => {
  test('have area and diameter by method and trade size', () => {
    expect(racewayArea(nec, 'EMT', '1-1/4')).toBe(1.496);
    expect(racewayDiameter(nec, 'RMC', '1')).toBe(1.063);
    expect(() => racewayArea(nec, 'EMT', '5')).toThrow(RangeError);
  });
  test('of tray have no trade sizes and no area', () => {
    expect(tradeSizes(nec, 'tray')).toEqual([]);
    expect(() => racewayArea(nec, 'tray', '2')).toThrow(RangeError);
  });
  test('of flexible metal are chosen from 1/2 up, and known at 3/8', () => {
    expect(tradeSizes(nec, 'LFMC')[0]).toBe('1/2');
    expect(hasRaceway(nec, 'LFMC', '3/8')).toBe(true);
  });
  test('may be filled by the number of conductors', () => {
    expect([1, 2, 3, 40].map((count) => fillLimit(nec, count))).toEqual([53, 31, 40, 40]);
    expect(fillLimit(nec, 2, true)).toBe(60);
  });
  test('bend to the radius of their bender', () => {
    expect(bendRadius(nec, '2')).toBe(9.5);
    expect(bendRadius(nec, '2', 'other')).toBe(12);
    expect(() => bendRadius(nec, '3/8')).toThrow(RangeError);
  });
  test('are held at the spacing of their method', () => {
    expect(supportSpacing(nec, 'EMT', '1')).toEqual({ spacingFt: 10, firstFt: 3 });
    expect(supportSpacing(nec, 'PVC40', '1')).toEqual({ spacingFt: 3, firstFt: 3 });
    expect(supportSpacing(nec, 'PVC80', '2-1/2')).toEqual({ spacingFt: 6, firstFt: 3 });
    expect(supportSpacing(nec, 'LFMC', '1')).toEqual({ spacingFt: 4.5, firstFt: 1 });
    expect(supportSpacing(nec, 'RMC', '4')).toEqual({ spacingFt: 10, firstFt: 3 });
    expect(supportSpacing(nec, 'RMC', '4', 'straight threaded')).toEqual({ spacingFt: 20, firstFt: 3 });
    expect(supportSpacing(nec, 'IMC', '1', 'straight threaded')).toEqual({ spacingFt: 12, firstFt: 3 });
    expect(supportSpacing(nec, 'tray', null)).toEqual({ spacingFt: 8, firstFt: 2 });
    expect(() => supportSpacing(nec, 'EMT', '1', 'straight threaded')).toThrow(RangeError);
  });
  test('that stand up have their conductors held by size', () => {
    expect(verticalSupportSpacing(nec, '8', 'copper')).toBe(100);
    expect(verticalSupportSpacing(nec, '4/0', 'aluminum')).toBe(180);
    expect(verticalSupportSpacing(nec, '250', 'copper')).toBe(60);
    expect(verticalSupportSpacing(nec, '2000', 'copper')).toBe(35);
  });
  test('are buried 24 in. under traffic, 18 or 6 elsewhere', () => {
    expect(coverInches(nec, 'PVC40', 'traffic')).toBe(24);
    expect(coverInches(nec, 'PVC80', 'elsewhere')).toBe(18);
    expect(coverInches(nec, 'RMC', 'elsewhere')).toBe(6);
  });
  test('count as PVC or steel for impedance', () => {
    expect(methodRaceway('PVC80')).toBe('PVC');
    expect(methodRaceway('EMT')).toBe('steel');
    expect(methodRaceway('tray')).toBe('steel');
  });
});

describe('equipment', () => {
  test('transformers are protected by their rated amperes', () => {
    const of = (primary: number) => transformerProtection(nec, 'primary only', { primary, secondary: 100 });
    expect([of(9).primary, of(8.9).primary, of(1.9).primary]).toEqual([125, 167, 300]);
    expect(of(9).secondary).toBeNull();
    expect(transformerProtection(nec, 'primary and secondary', { primary: 180, secondary: 416 })).toEqual({
      primary: 250,
      secondary: 125,
    });
    expect(transformerProtection(nec, 'primary and secondary', { primary: 1, secondary: 8 }).secondary).toBe(167);
  });
  test('working space deepens past 150 V to ground', () => {
    expect(workingSpaceDepth(nec, 120, 'grounded')).toBe(3);
    expect(workingSpaceDepth(nec, 277, 'grounded')).toBe(3.5);
    expect(workingSpaceDepth(nec, 277, 'live')).toBe(4);
    expect(workingSpaceDepth(nec, 2400, 'clear')).toBeNull();
  });
});
