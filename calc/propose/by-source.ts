import type { Metal } from '../../routing/site/schema/vocabulary.ts';
import type { Equipment, SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { counted } from '../../routing/words/counted.ts';
import { type EquipmentPart, type EquipmentWish, equipmentPart, PRICED_SHAPE } from './panels/equipment-part.ts';
import { panelSources } from './panels/panel-source.ts';
import { isBetter, type Whole } from './whole.ts';

/** What a search that is stopped at once finds of another source is searched whole where it comes so near, as a share. */
const NEAR = 0.15;

/**
 * The best whole of all sources that could feed new panels, fewer failing findings first, then by its bid; it says what was
 * looked at, and what the others would come to.
 * @param laid the whole that is fed from a source by its id, or from the only one
 */
export function fromBestSource(
  file: SiteFile,
  laid: (source: string | undefined, may: () => boolean) => Whole,
  mayGoOn: () => boolean,
): Whole {
  const sources = panelSources(toSite(file)).map(({ source }) => source);
  if (sources.length < 2) return laid(undefined, mayGoOn);
  const begun = sources
    .map((source) => ({ source, whole: laid(source.id, () => false), isBegun: true }))
    .sort((a, b) => (isBetter(b.whole, a.whole) ? 1 : isBetter(a.whole, b.whole) ? -1 : 0));
  const [first] = begun as [(typeof begun)[number]];
  const looked = begun.map((one) => {
    const isNear = one.whole.fails <= first.whole.fails && one.whole.dollars <= (1 + NEAR) * first.whole.dollars;
    return isNear && mayGoOn() ? { ...one, whole: laid(one.source.id, mayGoOn), isBegun: false } : one;
  });
  const best = looked.reduce((a, b) => (isBetter(b.whole, a.whole) ? b : a));
  const says = looked.flatMap((one) => {
    if (one === best) return [];
    // What was only begun is told beside what the best began with.
    const beside = one.isBegun ? begun.find(({ source }) => source === best.source)!.whole : best.whole;
    return isBetter(one.whole, beside) === isBetter(beside, one.whole)
      ? []
      : [otherWords(best.source, one.source, one.whole, beside, 'weighed whole')];
  });
  return withSays(best.whole, says);
}

/** Panels from the best of all sources, by what panels, feeders and branches weigh, fewest left without first. */
export function equipmentFromBest(
  file: SiteFile,
  wish: Omit<EquipmentWish, 'shape'>,
  metal: Metal | undefined,
): EquipmentPart {
  const made = panelSources(toSite(file)).map(({ source }) => {
    const own = equipmentPart(file, {
      ...wish,
      shape: { ...PRICED_SHAPE, ...(metal && { metal }), source: source.id },
    });
    return { source, own, fails: own.part.without.length, dollars: own.part.measure?.value ?? 0 };
  });
  const [first, ...others] = made;
  if (first === undefined || others.length === 0)
    return first?.own ?? equipmentPart(file, { ...wish, shape: { ...PRICED_SHAPE, ...(metal && { metal }) } });
  const best = others.reduce((a, b) => (isBetter(b, a) ? b : a), first);
  const says = made.flatMap((one) =>
    one === best || best.own.part.measure === null
      ? []
      : [
          otherWords(
            best.source,
            one.source,
            { ...one, fails: 0 },
            { ...best, fails: 0 },
            'by panels, feeders and branches alone',
          ),
        ],
  );
  return { ...best.own, part: { ...best.own.part, says: [...best.own.part.says, ...says] } };
}

type Worth = Pick<Whole, 'fails' | 'dollars'>;

function otherWords(best: Equipment, other: Equipment, its: Worth, own: Worth, how: string): string {
  const more = its.dollars - own.dollars;
  const fails = its.fails - own.fails;
  const money = `$${Math.round(Math.abs(more)).toLocaleString('en-US')}`;
  return `${named(best)} feeds the new panels. ${named(other)} was looked at too, ${how}: it would come to about ${money} ${more < 0 ? 'less' : 'more'}${fails > 0 ? `, and ${counted(fails, 'finding')} more would fail` : ''}.`;
}

const named = ({ id, volts }: Equipment): string => `${id}, ${volts} V,`;

/** With more said of its panels. */
export const withSays = (whole: Whole, says: readonly string[]): Whole =>
  says.length === 0
    ? whole
    : {
        ...whole,
        parts: whole.parts.map((part) =>
          part.what === 'equipment' ? { ...part, says: [...part.says, ...says] } : part,
        ),
      };
