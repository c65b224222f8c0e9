import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { readSite } from '../../../routing/site/file/read.ts';
import { writeSite } from '../../../routing/site/file/write.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { lotWith, SMALL_LOT } from '../checks/faults/small-lot.ts';

const issued = (conduits: Readonly<Record<string, string>>, file: SiteFile = SMALL_LOT): SiteFile => ({
  ...file,
  issued: { conduits },
});
const planOf = (file: SiteFile) => plan(toSite(file));
const waysOf = (file: SiteFile): Record<string, readonly string[]> =>
  Object.fromEntries(planOf(file).circuits.map(({ charger, conduits }) => [charger, conduits]));
const told = (file: SiteFile) => planOf(file).findings.filter(({ rule }) => rule === 'issued');
/** Each circuit in a conduit of its own. */
const APART = lotWith({ rules: { circuitsPerConduit: 1 } });

describe('names of conduits that were issued', () => {
  test('stand in the plan wherever a conduit is named, by any charger whose circuit lies in it', () => {
    const own = waysOf(SMALL_LOT);
    expect(own.EV1![0]).toBe(own.EV2![0]);
    const named = issued({ 'EV2/1': 'C-101' });
    const { conduits, boxes, circuits } = planOf(named);
    expect(waysOf(named).EV1![0]).toBe('C-101');
    const ids = conduits.map(({ id }) => id);
    expect(ids).toContain('C-101');
    expect(new Set(ids).size).toBe(ids.length);
    for (const { conduits: along } of circuits) for (const id of along) expect(ids).toContain(id);
    for (const box of boxes) for (const id of box.conduits) expect(ids).toContain(id);
    // Nothing but the name differs, and no other conduit has another.
    expect(conduits.map(({ id: _, ...rest }) => rest)).toEqual(
      planOf(SMALL_LOT).conduits.map(({ id: _, ...rest }) => rest),
    );
    expect(ids.filter((id) => id !== 'C-101')).toEqual(
      planOf(SMALL_LOT)
        .conduits.map(({ id }) => id)
        .slice(1),
    );
    expect(told(named)).toEqual([]);
  });

  test('stay when another circuit comes before and the plan would number anew', () => {
    const [first, second] = [waysOf(APART).EV1![0]!, waysOf(APART).EV2![0]!];
    expect(first).not.toBe(second);
    // Swapped on the wall: each keeps what it was issued.
    const swapped = issued({ 'EV1/1': second, 'EV2/1': first }, APART);
    expect([waysOf(swapped).EV1![0], waysOf(swapped).EV2![0]]).toEqual([second, first]);
    expect(told(swapped)).toEqual([]);
    // One alone is issued under the number of the other, which makes room.
    const one = issued({ 'EV1/1': second }, APART);
    expect(waysOf(one).EV1![0]).toBe(second);
    expect(waysOf(one).EV2![0]).not.toBe(second);
    const ids = planOf(one).conduits.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test('that cannot be kept are told: no such conduit, no such circuit, one conduit with two names', () => {
    const [warning] = told(issued({ 'EV1/9': 'X', 'EV7/1': 'Y' }));
    expect(warning).toMatchObject({ severity: 'warn', about: ['EV1'], value: 2 });
    expect(warning!.says).toContain('X (EV1/9)');
    expect(warning!.says).toContain('EV7 has no circuit');
    expect(told(issued({ 'EV1/1': 'A', 'EV2/1': 'B' }))).toMatchObject([{ value: 1, about: ['EV2'] }]);
    expect(told(issued({ 'EV1/1': 'A', 'EV2/1': 'A' }))).toEqual([]);
    // Two conduits issued under one name: the first has it.
    const twice = issued({ 'EV1/1': 'A', 'EV2/1': 'A' }, APART);
    expect(planOf(twice).conduits.filter(({ id }) => id === 'A')).toHaveLength(1);
    expect(told(twice)).toMatchObject([{ value: 1, about: ['EV2'] }]);
  });

  test('are read strictly, and written back as they were', () => {
    const text = JSON.stringify(issued({ 'EV1/1': 'C-101' }));
    const read = readSite(text);
    expect(read.ok && JSON.parse(writeSite(read.file)).issued).toEqual({ conduits: { 'EV1/1': 'C-101' } });
    for (const key of ['EV1', 'EV1/0', '/1', 'EV1/x'])
      expect(readSite(JSON.stringify(issued({ [key]: 'C' }))).ok).toBe(false);
    expect(readSite(JSON.stringify(issued({ 'EV1/1': '' }))).ok).toBe(false);
  });
});
