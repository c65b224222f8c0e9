import { describe, expect, it, test } from 'vitest';
import { MAX_ERRORS_TOLD, readSite, readSiteValue } from '../../../../routing/site/file/read.ts';
import { everyField, everyFieldText, withPart } from './every-field.ts';

type Path = readonly (string | number)[];

const errorsOf = (value: unknown) => {
  const result = readSiteValue(value);
  return result.ok ? [] : result.errors;
};
const MINIMAL = { format: 'overrow/site', version: 1, units: 'ft', name: 'Bare' };

describe('what is read', () => {
  it('is a file with every field', () => {
    expect(readSite(everyFieldText)).toEqual({ ok: true, file: everyField() });
  });

  it('is a file with nothing but format, version, units and name', () => {
    expect(readSiteValue(MINIMAL)).toEqual({ ok: true, file: MINIMAL });
  });

  it('is the very value, not a copy, and nothing in it changes', () => {
    const value = Object.freeze({ ...MINIMAL, stalls: Object.freeze([]) });
    const result = readSiteValue(value);
    expect(result.ok && result.file).toBe(value);
  });

  it('may name ids after what every object has', () => {
    const names = ['constructor', 'toString', '__proto__', 'hasOwnProperty'];
    const drops = names.map((id) => ({ id, box: [0, 0, 9], cord: 20 }));
    const asBuilt = JSON.parse('{"constructor": {"note": "as drawn"}, "toString": {}}') as object;
    expect(errorsOf({ ...MINIMAL, drops, asBuilt })).toEqual([]);
  });

  it('may begin with a byte order mark', () => {
    expect(readSite(`\ufeff${everyFieldText}`).ok).toBe(true);
  });
});

describe('an error names its place and what was expected', () => {
  const F = (path: Path, part: unknown, place: string, says: RegExp) => ({ path, part, place, says });
  test.each([
    F(['format'], 'overrow/plan', 'format', /expected "overrow\/site", got "overrow\/plan"/),
    F(['format'], undefined, 'format', /missing: expected "overrow\/site"/),
    F(['version'], '1', 'version', /expected 1, got "1"/),
    F(['version'], 0, 'version', /expected 1, got 0/),
    F(['version'], 1.5, 'version', /expected 1, got 1\.5/),
    F(['units'], 'feet', 'units', /expected one of "ft", "m", got "feet"/),
    F(['name'], undefined, 'name', /missing: expected a text/),
    F(['name'], null, 'name', /expected a text, got null/),
    F(['stals'], [], 'stals', /unknown field; did you mean "stalls"\?/),
    F(['stalls', 0, 'colour'], 'red', 'stalls[0].colour', /unknown field/),
    F(['stalls'], { S01: {} }, 'stalls', /expected a list, got an object/),
    F(['stalls', 1], 'S02', 'stalls[1]', /expected an object, got "S02"/),
    F(['stalls', 1], [], 'stalls[1]', /expected an object, got an empty list/),
    F(['stalls', 0, 'id'], '', 'stalls[0].id', /expected a text that is not empty, got ""/),
    F(['stalls', 0, 'id'], 'x'.repeat(65), 'stalls[0].id', /at most 64 characters, got 65/),
    F(['stalls', 0, 'id'], 'S\n1', 'stalls[0].id', /control characters/),
    F(['stalls', 0, 'at'], [1], 'stalls[0].at', /expected a list of 2 numbers, got a list of 1/),
    F(['stalls', 0, 'at'], [1, 2, 3], 'stalls[0].at', /expected a list of 2 numbers, got a list of 3/),
    F(['stalls', 0, 'at', 1], '18', 'stalls[0].at[1]', /expected a number, got "18"/),
    F(['stalls', 0, 'width'], 0, 'stalls[0].width', /expected a number over 0, got 0/),
    F(['stalls', 0, 'width'], undefined, 'stalls[0].width', /missing: expected a number over 0/),
    F(['stalls', 0, 'label'], null, 'stalls[0].label', /expected a text, got null/),
    F(['stalls', 0, 'heading'], Number.NaN, 'stalls[0].heading', /expected a number, got NaN/),
    F(['stalls', 0, 'heading'], Number.NEGATIVE_INFINITY, 'stalls[0].heading', /finite number, got -Infinity/),
    F(
      ['stalls', 0, 'use'],
      'Standard',
      'stalls[0].use',
      /one of "standard", "accessible", "van-accessible", "ambulatory"/,
    ),
    F(['stalls', 0, 'vehicle'], 'Sedan', 'stalls[0].vehicle', /name of a vehicle class.*did you mean "sedan"/),
    F(['keepouts', 0, 'outline'], [[0, 0]], 'keepouts[0].outline', /expected a list of 3 or more, got a list of 1/),
    F(['keepouts', 0, 'blocks', 1], 'cords', 'keepouts[0].blocks[1]', /one of "raceway", "drop"/),
    F(['gridlines'], [], 'gridlines', /expected an object, got an empty list/),
    F(['equipment', 2, 'spaces'], 2.5, 'equipment[2].spaces', /whole number over 0, got 2\.5|whole number.*got 2\.5/),
    F(['equipment', 2, 'phases'], 2, 'equipment[2].phases', /expected one of 1, 3, got 2/),
    F(['feeders', 0, 'conductor', 'metal'], 'gold', 'feeders[0].conductor.metal', /"copper", "aluminum", "Cu", "Al"/),
    F(['feeders', 0, 'from'], 'U9', 'feeders[0].from', /id of a piece of equipment, got "U9", which nothing has/),
    F(['feeders', 1, 'to'], 'R1', 'feeders[1].to', /got "R1", which is a raceway \(raceways\[0\]\)/),
    F(['loads', 0, 'from'], 'P-1', 'loads[0].from', /which nothing has; did you mean "P1"\?/),
    F(['loads', 0, 'continuous'], 'yes', 'loads[0].continuous', /expected true or false, got "yes"/),
    F(['raceways', 0, 'path', 1, 2], 100_001, 'raceways[0].path[1][2]', /at most 100,000 ft.*got 100001/),
    F(['drops', 1, 'cord'], 1e9, 'drops[1].cord', /at most 100,000 ft/),
    F(['drops', 1, 'id'], 'D01', 'drops[1].id', /repeated id "D01": drops\[0\]\.id has it too/),
    F(['pullpoints', 0, 'id'], 'S02', 'pullpoints[0].id', /repeated id "S02": stalls\[1\]\.id has it too/),
    F(['chargers', 0, 'drop'], 'D9', 'chargers[0].drop', /expected the id of a drop, got "D9"/),
    F(['chargers', 0, 'drop'], 'D1', 'chargers[0].drop', /did you mean "D01"\?/),
    F(['chargers', 0, 'from'], 'D01', 'chargers[0].from', /which is a drop \(drops\[0\]\)/),
    F(['chargers', 0, 'stalls', 1], 'S99', 'chargers[0].stalls[1]', /expected the id of a stall, got "S99"/),
    F(['chargers', 0, 'amps'], -40, 'chargers[0].amps', /expected a number over 0, got -40/),
    F(['vehicles', 'lift van', 'width'], 'wide', 'vehicles["lift van"].width', /expected a number over 0/),
    F(['vehicles', 'lift van', 'inlets'], [], 'vehicles["lift van"].inlets', /list of 1 or more, got an empty list/),
    F(['vehicles', 'lift van', 'inlets', 0, 'along'], 2, 'vehicles["lift van"].inlets[0].along', /at most 1, got 2/),
    F(['vehicles'], [], 'vehicles', /expected an object, got an empty list/),
    F(['rules'], [], 'rules', /expected an object, got an empty list/),
    F(['rules', 'allowance', 'box'], -1, 'rules.allowance.box', /expected a number of 0 or more, got -1/),
    F(['rules', 'branchLimits'], 3, 'rules.branchLimits', /unknown field; did you mean "branchLimit"\?/),
    F(['rules', 'terminalC'], 70, 'rules.terminalC', /expected one of 60, 75, 90, got 70/),
    F(['rules', 'powerFactor'], 1.1, 'rules.powerFactor', /at most 1, got 1\.1/),
    F(['rules', 'vehicle'], 'tank', 'rules.vehicle', /name of a vehicle class \("compact", .*"lift van"/),
    F(['georef', 'lat'], 91, 'georef.lat', /at most 90, got 91/),
    F(['georef', 'lat'], -91, 'georef.lat', /at least -90, got -91/),
    F(['asBuilt', 'D77'], {}, 'asBuilt.D77', /expected the id of a drop, got "D77", which nothing has/),
    F(['asBuilt', 'D01', 'box'], [0, 0], 'asBuilt.D01.box', /expected a list of 3 numbers/),
  ])('$place: $says', ({ path, part, place, says }) => {
    const errors = errorsOf(withPart(everyField(), path, part));
    expect(errors.map((error) => error.place)).toContain(place);
    const at = errors.filter((error) => error.place === place);
    expect(at.map((error) => error.says).join('\n')).toMatch(says);
  });

  test.each(['__proto__', 'constructor', 'toString', 'hasOwnProperty'])(
    'an unknown field called %s is told',
    (name) => {
      const text = everyFieldText.replace('"name":', `${JSON.stringify(name)}: {}, "name":`);
      const result = readSite(text);
      expect(!result.ok && result.errors.map(({ place, says }) => ({ place, says }))).toEqual([
        { place: name, says: 'unknown field' },
      ]);
    },
  );

  it('a vehicle class cannot be called __proto__, and one called constructor is checked like any other', () => {
    const car =
      '{"length": 1, "width": 1, "height": 1, "inlets": [{"name":"a","along":0,"side":"top","height":1,"share":1}]}';
    const text = JSON.stringify(MINIMAL).replace('}', `, "vehicles": {"__proto__": ${car}, "constructor": ${car}}}`);
    const result = readSite(text);
    expect(result.ok ? [] : result.errors.map((error) => error.place)).toEqual([
      'vehicles.__proto__',
      'vehicles.__proto__.inlets[0].side',
      'vehicles.constructor.inlets[0].side',
    ]);
  });

  it('a value that is no object at all is told', () => {
    for (const value of [null, 7, 'site', [], undefined]) {
      expect(errorsOf(value)[0]).toMatchObject({ place: '', says: expect.stringContaining('expected an object') });
    }
  });
});

describe('lengths in a metric file', () => {
  const metric = (cord: number) => ({
    ...MINIMAL,
    units: 'm',
    drops: [{ id: 'D1', box: [0, 0, 3], cord }],
  });

  it('may be 30,480 m, which is 100,000 ft, and not more', () => {
    expect(errorsOf(metric(30_480))).toEqual([]);
    expect(errorsOf(metric(30_481))).toMatchObject([
      { place: 'drops[0].cord', says: expect.stringContaining('30,480 m (100,000 ft)') },
    ]);
  });

  it('count elevations below grade as well', () => {
    const value = { ...MINIMAL, pullpoints: [{ id: 'Q', at: [0, 0, -100_001] }] };
    expect(errorsOf(value)).toMatchObject([{ place: 'pullpoints[0].at[2]' }]);
  });
});

describe('all errors of a file', () => {
  it('are told at once, in shape, ids and references alike', () => {
    const value = everyField();
    withPart(value, ['units'], 'yd');
    withPart(value, ['extra'], 1);
    withPart(value, ['another'], 1);
    withPart(value, ['stalls', 0, 'width'], '9');
    withPart(value, ['stalls', 1, 'id'], 'D01');
    withPart(value, ['chargers', 0, 'drop'], 'D09');
    withPart(value, ['feeders', 0, 'breakerAmps'], undefined);
    expect(errorsOf(value).map((error) => error.place)).toEqual([
      'units',
      'stalls[0].width',
      'feeders[0].breakerAmps',
      'extra',
      'another',
      'drops[0].id',
      'chargers[0].drop',
      'chargers[0].stalls[1]',
      'chargers[1].stalls[0]',
    ]);
  });

  it('say how many are not listed where there are very many', () => {
    const stalls = Array.from({ length: MAX_ERRORS_TOLD + 500 }, (_, i) => i);
    const errors = errorsOf({ ...MINIMAL, stalls });
    expect(errors).toHaveLength(MAX_ERRORS_TOLD + 1);
    expect(errors.at(-1)).toEqual({ place: '', says: 'and 500 more errors' });
  });

  it('give the line of the text they are on', () => {
    const text = everyFieldText.replace('"cord": 24', '"cord": -24').replace('"phases": 1 }', '"phase": 1 }');
    const result = readSite(text);
    const line = (part: string) => text.slice(0, text.indexOf(part)).split('\n').length;
    const found = result.ok ? [] : result.errors.map(({ place, line: at }) => [place, at]);
    expect(found).toEqual([
      ['drops[1].cord', line('"cord": -24')],
      ['chargers[1].phase', line('"phase": 1 }')],
      ['chargers[1].phases', line('"phase": 1 }')],
    ]);
  });
});

describe('a text that is not what JSON.parse would keep', () => {
  it('names line and column of a syntax error', () => {
    const result = readSite('{\n  "format": "overrow/site",\n  "version" 1\n}');
    expect(result).toEqual({
      ok: false,
      errors: [{ place: '', says: 'not JSON: line 3, column 13: expected ":" after the field name, got "1"', line: 3 }],
    });
  });

  it('is an error where a field stands twice, beside the errors of the rest', () => {
    const text = everyFieldText
      .replace('"depth": 18,', '"depth": 18, "depth": 20,')
      .replace('"cord": 24', '"cord": -24');
    const result = readSite(text);
    expect(result.ok ? [] : result.errors.map((error) => error.place)).toEqual(['stalls[0].depth', 'drops[1].cord']);
    const line = text.slice(0, text.indexOf('"depth": 20')).split('\n').length;
    expect(!result.ok && result.errors[0]?.says).toMatch(
      new RegExp(`stands twice in one object, again at line ${line}, column \\d+`),
    );
  });

  it('is refused by its size alone past 67 million characters', () => {
    const result = readSite(' '.repeat(64 * 1024 * 1024 + 1));
    expect(result).toEqual({
      ok: false,
      errors: [{ place: '', says: 'the text is 67 million characters long; at most 67 million are read' }],
    });
  });
});
