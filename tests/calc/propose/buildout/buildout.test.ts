import { describe, expect, test } from 'vitest';
import { alternativeOf } from '../../../../calc/plan/compared/alternative.ts';
import { plan } from '../../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../../calc/prices/invented-list.ts';
import { buildPhases } from '../../../../calc/propose/buildout/build-phases.ts';
import { phaseFile } from '../../../../calc/propose/buildout/phase-file.ts';
import { phasePrices } from '../../../../calc/propose/buildout/phase-prices.ts';
import { propose } from '../../../../calc/propose/propose.ts';
import { startSite } from '../../../../calc/propose/start-site.ts';
import { readSite } from '../../../../routing/site/file/read.ts';
import { writeSite } from '../../../../routing/site/file/write.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';

const WISH = { what: 'all', cordsADrop: 1, prices: INVENTED_LIST } as const;
const cents = (dollars: number): number => Math.round(dollars * 100);

/** A bare lot in which every stall from some place on is for a later phase. */
function ground(phaseOf: (place: number) => number, stalls = 8): SiteFile {
  const file = startSite({ name: 'Phased', stalls, rows: 2 });
  return {
    ...file,
    stalls: file.stalls!.map((stall, i) => (phaseOf(i) === 1 ? stall : { ...stall, phase: phaseOf(i) })),
  };
}

const fails = (file: SiteFile) => plan(toSite(file)).findings.filter(({ severity }) => severity === 'fail');

describe.each([
  ['the far half is for later', (place: number) => (place % 4 < 2 ? 1 : 2)],
  ['one row is for later', (place: number) => (place < 4 ? 1 : 2)],
  ['three phases', (place: number) => 1 + (place % 3)],
] as const)('%s', (_, phaseOf) => {
  const { file, parts } = propose(ground(phaseOf), WISH);
  const site = toSite(file);
  const last = Math.max(...file.stalls!.map(({ phase = 1 }) => phase));

  test('the lot of each phase by itself has no failing finding, and neither has the whole', () => {
    for (let phase = 1; phase <= last; phase++) {
      const own = phaseFile(file, phase);
      const read = readSite(writeSite(own));
      if (!read.ok) throw new Error(read.errors.map(({ says }) => says).join('\n'));
      expect(fails(own)).toEqual([]);
      const served = own.chargers!.flatMap(({ stalls }) => stalls);
      const wanted = file.stalls!.filter((stall) => (stall.phase ?? 1) <= phase).map(({ id }) => id);
      expect([...served].sort()).toEqual([...wanted].sort());
    }
    expect(phaseFile(file, last)).toBe(file);
  });

  test('the phases sum to the whole, to the cent', () => {
    const whole = alternativeOf('', site, INVENTED_LIST);
    const prices = phasePrices(whole);
    expect(prices.map(({ phase }) => phase)).toEqual(Array.from({ length: last }, (__, i) => i + 1));
    expect(prices.reduce((sum, { price }) => sum + cents(price), 0)).toBe(cents(whole.cost.price));
    for (const { price, forLater } of prices) {
      expect(price).toBeGreaterThan(0);
      expect(forLater).toBeGreaterThanOrEqual(0);
      expect(forLater).toBeLessThan(price);
    }
  });

  test('nothing is laid after what needs it: ways, panels and feeders of a charger come with it or before', () => {
    const planned = plan(site);
    const laid = buildPhases(site, planned);
    for (const { charger, raceways, from } of planned.runs)
      for (const id of [...raceways, from]) expect(laid.get(id)!).toBeLessThanOrEqual(laid.get(charger)!);
    for (const { id, circuits } of planned.conduits)
      for (const charger of circuits) expect(laid.get(id)!).toBeLessThanOrEqual(laid.get(charger)!);
  });

  test('it says what each phase costs, that each stands alone, and what laying it for itself would', () => {
    const said = parts.flatMap(({ says }) => says).join('\n');
    for (const words of [
      `Built in ${last} phases`,
      'Phase 1 alone: planned by itself, nothing fails.',
      'Each phase laid for itself alone: $',
    ])
      expect(said).toContain(words);
    expect(said).not.toMatch(/Phases? 1[^:]*alone: \d+ finding/);
  });
});

test('a lot that is for now says nothing of phases and is its own only phase', () => {
  const { file, parts } = propose(
    ground(() => 1, 4),
    WISH,
  );
  expect(parts.flatMap(({ says }) => says).join('\n')).not.toContain('phase');
  expect(phaseFile(file, 1)).toBe(file);
});
