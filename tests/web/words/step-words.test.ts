import { expect, test } from 'vitest';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { stepFigure } from '../../../calc/words/step-words.ts';
import { printTemperature, printTemperatureRange } from '../../../routing/site/numbers/temperature.ts';
import { priceMore, priceWords } from '../../../web/words/dollars.ts';

test('lengths of a step read as elsewhere', () => {
  expect(stepFigure('21.6814 ft', 'ft')).toBe('21\' 8 3/16"');
  expect(stepFigure(21.6814, 'ft', 'ft')).toBe('21\' 8 3/16"');
  expect(stepFigure(21.6814, 'm', 'ft')).toBe('6.608 m');
  expect(stepFigure('40 A', 'ft')).toBe('40 A');
  expect(stepFigure('3 %', 'ft')).toBe('3%');
  expect(stepFigure(2.912345678, 'ft', '%')).toBe('2.91235%');
  expect(stepFigure(40, 'ft', '°C')).toBe('40 °C (104 °F)');
  expect(stepFigure('over 100 ft and more', 'ft')).toBe('over 100 ft and more');
});

test('a temperature is F x 5/9 from 32, a difference of temperatures F x 5/9', () => {
  expect(printTemperature(100)).toBe('100 °C (212 °F)');
  expect(printTemperature(-40)).toBe('-40 °C (-40 °F)');
  expect(printTemperature(37)).toBe('37 °C (98.6 °F)');
  expect(printTemperatureRange(100)).toBe('100 °C (180 °F)');
});

test('invented prices have no cents, others do', () => {
  expect(priceWords(4668.84, INVENTED_LIST)).toBe('$4,669');
  expect(priceWords(0, INVENTED_LIST)).toBe('$0');
  expect(priceWords(4668.84, { name: 'prices.csv' })).toBe('$4,668.84');
});

test('what one price is more than another is so as both are written', () => {
  // 44,694.4 and 44,587.6 are 106.8 apart and are written as 44,694 and 44,588.
  expect(priceMore(44_587.6, 44_694.4, INVENTED_LIST)).toBe(-106);
  expect(priceMore(44_587.604, 44_694.406, { name: 'a list' })).toBe(-106.81);
  expect(priceMore(100.2, 99.9, INVENTED_LIST)).toBe(0);
});
