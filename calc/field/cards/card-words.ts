import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import { fromFeet } from '../../../routing/site/numbers/units.ts';
import type { Units } from '../../../routing/site/schema/vocabulary.ts';
import { counted } from '../../../routing/words/counted.ts';
import type { CardName } from './card-link.ts';
import type { CardConduit, CircuitCard, ConduitCard, HardPull, PullCard } from './pull-cards.ts';

/** One thing that a card says, under its name. */
export interface CardLine {
  readonly name: string;
  readonly says: readonly string[];
  /** The card that each line is about, where that has one of its own. */
  readonly opens?: readonly (CardName | null)[];
}

const INCH = { inchParts: 1, decimals: 2 } as const;

/** What stands at the head of a card. */
export const cardTitle = (card: PullCard): string => (card.kind === 'conduit' ? card.id : card.circuit);

/** What stands under that: what it serves, from where to where. */
export function cardSubtitle(card: PullCard): string {
  const ends = `${card.from} to ${card.to}`;
  if (card.kind === 'conduit') return `Conduit ${card.spec}, ${ends}`;
  const amps = card.breakerAmps === null ? '' : `, ${card.breakerAmps} A breaker`;
  return `${card.kind === 'feeder' ? 'Feeder' : 'Charger'} ${card.id}, ${ends}${amps}`;
}

/** All else that a card says, in the order in which it is wanted. */
export const cardLines = (card: PullCard, units: Units): readonly CardLine[] =>
  card.kind === 'conduit' ? conduitLines(card, units) : circuitLines(card, units);

function circuitLines(card: CircuitCard, units: Units): readonly CardLine[] {
  const { conductors, colors, reels, conduits, through, neighbours, openings, hard } = card;
  return [
    { name: 'pull', says: [...conductors, colors.join(', ')] },
    { name: 'cut each to', says: [cutWords(card.feet, units)] },
    { name: 'reel', says: [reels.length > 0 ? reels.join(', ') : 'none: cut to length'] },
    through.length > 0
      ? { name: 'through', says: through }
      : {
          name: 'conduits',
          says: conduits.map((conduit, i) => `${i + 1}. ${conduit.id} to ${conduit.to}: ${shapeWords(conduit, units)}`),
          opens: conduits.map(({ id }) => ({ kind: 'conduit', id })),
        },
    ...(card.kind === 'feeder'
      ? []
      : [
          { name: 'pull points', says: openings.length > 0 ? openings : ['none on the way'] },
          { name: 'beside it', says: [neighbours.length > 0 ? neighbours.join(', ') : 'no other circuit'] },
          { name: 'tension', says: hard.length > 0 ? hard.map(hardWords) : [EASY] },
        ]),
  ];
}

function conduitLines(card: ConduitCard, units: Units): readonly CardLine[] {
  const { contents, fillPercent, fillLimit, raceways, hard } = card;
  return [
    {
      name: 'holds',
      says: contents.map((content) => contentWords(content, units)),
      opens: contents.map(({ charger }) => (charger === null ? null : { kind: 'circuit', id: charger })),
    },
    { name: 'shape', says: [shapeWords(card, units)] },
    { name: 'fill', says: [`${fillPercent.toFixed(1)}% of ${fillLimit}%`] },
    ...(raceways.length > 0 ? [{ name: 'along', says: [raceways.join(', ')] }] : []),
    { name: 'tension', says: [hard ? hardWords(hard) : EASY] },
  ];
}

const EASY = 'easy: within its limits at a glance';

function contentWords(content: ConduitCard['contents'][number], units: Units): string {
  const { circuit, charger, conductors, colors, feet } = content;
  const cut = feet === null ? '' : `cut ${cutWords(feet, units)}`;
  const own = charger === null || charger === circuit ? '' : ` (${charger})`;
  return `${circuit}${own}: ${[...conductors, colors.join(', '), cut].filter(Boolean).join(', ')}`;
}

const shapeWords = ({ spec, length, bends, bendDegrees }: Omit<CardConduit, 'id'>, units: Units): string =>
  `${spec}, ${printLength(length, units, INCH)}, ${bends === 0 ? 'no bend' : `${counted(bends, 'bend')}, ${Math.round(bendDegrees)} degrees`}`;

const hardWords = ({ conduit, towards, pounds, mostPounds }: HardPull): string =>
  `${conduit}: about ${Math.round(pounds)} lb of ${Math.round(mostPounds)} lb, pulled towards ${towards}`;

/** Whole feet, or metres to the tenth above. */
const cutWords = (feet: number, units: Units): string =>
  units === 'ft' ? `${feet} ft` : `${(Math.ceil(fromFeet(feet, 'm') * 10 - 1e-9) / 10).toFixed(1)} m`;
