/** What a card is of. */
export const CARD_KINDS = ['circuit', 'feeder', 'conduit'] as const;
export type CardKind = (typeof CARD_KINDS)[number];

/** A card by its name: of a circuit that of its charger. */
export interface CardName {
  readonly kind: CardKind;
  readonly id: string;
}

/** A card of a site, as an address names it. */
export interface CardOfSite extends CardName {
  /** The name of the site: all that two devices know it by. */
  readonly site: string;
}

/** What stands before the name of a card in the address of the page. */
const CARD_MARK = '#card=';

/** The page's own address with the name of a card behind its mark, so that no host hears of it. */
export const cardLink = (page: string, { kind, id, site }: CardOfSite): string =>
  `${page.replace(/#.*$/s, '')}${CARD_MARK}${[kind, id, site].map(encodeURIComponent).join('/')}`;

/** The card that an address names; `null` where it names none, `'damaged'` where its name is not whole. */
export function cardInLink(address: string): CardOfSite | 'damaged' | null {
  const at = address.indexOf(CARD_MARK);
  if (at < 0) return null;
  const parts = address.slice(at + CARD_MARK.length).split('/');
  try {
    const [kind, id, site] = parts.map(decodeURIComponent);
    const known = CARD_KINDS.find((each) => each === kind);
    return known && id && site !== undefined && parts.length === 3 ? { kind: known, id, site } : 'damaged';
  } catch {
    return 'damaged';
  }
}
