import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cardInLink, cardLink } from '../../../calc/field/cards/card-link.ts';
import { cardLines, cardSubtitle } from '../../../calc/field/cards/card-words.ts';
import { type CircuitCard, type ConduitCard, pullCard, pullCards } from '../../../calc/field/cards/pull-cards.ts';
import { plan } from '../../../calc/plan/plan.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { SMALL_LOT } from '../checks/faults/small-lot.ts';
import { libraryLot } from './start-lot.ts';

const cardsOf = (file: SiteFile) => {
  const site = toSite(file);
  const planned = plan(site);
  return { site, planned, cards: pullCards(site, planned) };
};
const saying = (lines: ReturnType<typeof cardLines>, name: string) => lines.find((line) => line.name === name)?.says;

describe('pull cards', () => {
  const { site, planned, cards } = cardsOf(libraryLot());

  test('are one for each new feeder, circuit and conduit', () => {
    const ids = (kind: string) => cards.flatMap((card) => (card.kind === kind ? [card.id] : [])).sort();
    expect(ids('circuit')).toEqual(planned.circuits.map(({ charger }) => charger).sort());
    expect(ids('conduit')).toEqual(planned.conduits.map(({ id }) => id).sort());
    expect(ids('feeder')).toEqual(site.feeders.flatMap(({ id, existing }) => (existing ? [] : [id])).sort());
  });

  test('a circuit goes from its panel to its box through conduits that follow on each other, beside all that lie in them', () => {
    for (const card of cards) {
      if (card.kind !== 'circuit') continue;
      const { conduits, from, to, neighbours, colors, feet } = card;
      expect(conduits[0]!.from).toBe(from);
      expect(conduits.at(-1)!.to).toBe(to);
      for (const [i, { from: start }] of conduits.entries()) if (i > 0) expect(start).toBe(conduits[i - 1]!.to);
      // Each conduit's own card tells the same of it.
      const beside = conduits.flatMap(
        ({ id }) => (pullCard(site, planned, { kind: 'conduit', id }) as ConduitCard).contents,
      );
      const others = beside.filter(({ charger }) => charger !== null && charger !== card.id);
      expect(new Set(neighbours)).toEqual(new Set(others.map(({ circuit }) => circuit)));
      expect(colors.length).toBe(card.conductors.reduce((sum, words) => sum + Number.parseInt(words, 10), 0));
      // What is cut is longer than the conduits that it goes through.
      expect(feet).toBeGreaterThan(conduits.reduce((sum, { length }) => sum + length, 0));
    }
  });

  test('a card reads as the crew speaks: to be cut, in what order, with whom', () => {
    const card = pullCard(site, planned, { kind: 'circuit', id: 'EV04' })!;
    expect(cardSubtitle(card)).toBe('Charger EV04, P1 to D04, 40 A breaker');
    const lines = cardLines(card, 'ft');
    expect(saying(lines, 'pull')).toEqual([
      '2 x 8 AWG copper THWN-2',
      '1 x 14 AWG copper THWN-2',
      'black, red, violet',
    ]);
    expect(saying(lines, 'conduits')?.[0]).toBe(`1. P1-3.1 to PB1: EMT 1 in, 24' 6", 1 bend, 90 degrees`);
    expect(saying(lines, 'pull points')).toEqual(['PB1, pull point', 'P1-3.J1, junction box']);
    expect(saying(lines, 'beside it')).toEqual(['P1-5/7, P1-22/24']);
  });

  test('the small lot by hand: one panel, 6 to 11 ft up, then 9 ft, and on to each box', () => {
    const small = cardsOf(SMALL_LOT);
    const ev1 = pullCard(small.site, small.planned, { kind: 'circuit', id: 'EV1' }) as CircuitCard;
    // 5 ft up, 9 ft across, 15 ft along to the first box.
    expect(ev1.conduits.reduce((sum, { length }) => sum + length, 0)).toBeCloseTo(29, 6);
    expect(ev1.conduits.map(({ bends }) => bends).reduce((a, b) => a + b)).toBe(2);
    expect(ev1.conduits.map(({ bendDegrees }) => bendDegrees).reduce((a, b) => a + b)).toBe(180);
  });

  test('a pull past a glance says what it takes and from which end', () => {
    // 24 ft straight down at the end of 300 ft: pulled from below, its own weight helps.
    const far = {
      ...SMALL_LOT.raceways[0]!,
      path: [
        [-6, 0, 6],
        [-6, 0, 11],
        [-6, 9, 11],
        [2000, 9, 11],
      ],
    };
    const drops = SMALL_LOT.drops.map((drop) => ({ ...drop, box: [1990, 9, 11], retractor: [1990, 9, 10] }));
    const { cards: hard } = cardsOf({ ...SMALL_LOT, raceways: [far], drops } as unknown as SiteFile);
    const found = hard.flatMap((card) => (card.kind === 'circuit' ? card.hard : []));
    expect(found.length).toBeGreaterThan(0);
    for (const { pounds, mostPounds, towards, conduit } of found) {
      expect(pounds).toBeGreaterThan(0);
      expect(mostPounds).toBeGreaterThan(0);
      const own = hard.find((card) => card.kind === 'conduit' && card.id === conduit) as ConduitCard;
      expect([own.from, own.to]).toContain(towards);
    }
  });
});

describe('the address of a card', () => {
  test('comes back as it went out, whatever its names hold', () => {
    const name = fc.string({ minLength: 1, maxLength: 64, unit: 'grapheme' });
    fc.assert(
      fc.property(
        fc.constantFrom('circuit' as const, 'conduit' as const, 'feeder' as const),
        name,
        name,
        (kind, id, lot) => {
          const link = cardLink('https://lots.example/overrow/?a=1#old', { kind, id, site: lot });
          expect(link.startsWith('https://lots.example/overrow/?a=1#card=')).toBe(true);
          expect(cardInLink(link)).toEqual({ kind, id, site: lot });
          // Nothing else stands in it.
          expect(new URL(link).hash.split('/')).toHaveLength(3);
        },
      ),
      { numRuns: 200 },
    );
  });

  test('that is not whole is said to be so, and one without a card is none', () => {
    for (const hash of [
      '#card=',
      '#card=circuit',
      '#card=circuit/EV1',
      '#card=cord/EV1/lot',
      '#card=circuit/%E0%A4%A/lot',
      '#card=circuit//lot',
      '#card=circuit/EV1/lot/more',
    ])
      expect(cardInLink(`https://lots.example/${hash}`)).toBe('damaged');
    expect(cardInLink('https://lots.example/#records=abc')).toBeNull();
  });
});
