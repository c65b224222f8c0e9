import type { DropMake } from '../../../routing/propose/drops/hanging-places.ts';
import type { DropOrder } from '../../../routing/propose/drops/in-order.ts';
import { proposeDrops } from '../../../routing/propose/drops/propose-drops.ts';
import { newIds } from '../../../routing/site/new-id.ts';
import type { Drop, Point2, Site, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { counted } from '../../../routing/words/counted.ts';
import { panelsOf } from '../feeding.ts';
import { lengthIn, placeIn } from '../in-file.ts';
import type { ProposalPart } from '../part.ts';
import { USUAL_DROP } from '../usual.ts';

/** A cord that a stall is to have: which drop it hangs from. */
export interface CordToCome {
  readonly drop: string;
  readonly stall: string;
}

export interface DropsPart {
  readonly file: SiteFile;
  readonly cords: readonly CordToCome[];
  readonly part: ProposalPart;
}

/** New drops for the stalls that no charger serves, or those of them that are wanted, the cords that hang from them, and what there is to say. */
export function dropsPart(
  file: SiteFile,
  cordsADrop: number,
  wanted?: ReadonlySet<string>,
  order: Omit<DropOrder, 'toward'> = { isFlipped: false, over: 'middle' },
): DropsPart {
  const site = toSite(file);
  const { cord, retractorBelow, elevation, restHeight } = USUAL_DROP;
  const make: DropMake = {
    cord: Math.min(cord, site.rules.cordLimit),
    retractorBelow,
    elevation,
    holds: cordsADrop,
    order: { ...order, toward: feedPoint(site) },
  };
  const proposal = proposeDrops(site, make, wanted);
  const ids = newIds(file, 'D', proposal.drops.length);
  const { units } = file;
  const drops = proposal.drops.map(
    ({ box, retractor }, i): Drop => ({
      id: ids[i]!,
      box: placeIn(units, box),
      ...(retractor && { retractor: placeIn(units, retractor) }),
      cord: lengthIn(units, Math.min(cord, site.rules.cordLimit)),
      restHeight: lengthIn(units, restHeight),
      ...(cordsADrop > 1 && { holds: cordsADrop }),
    }),
  );
  const cords = [
    ...proposal.added,
    ...proposal.drops.flatMap(({ stalls }, i) => stalls.map((stall) => ({ drop: ids[i]!, stall }))),
  ];
  const n = drops.length;
  const stalls = (count: number): string => counted(count, 'stall');
  return {
    file: n === 0 ? file : { ...file, drops: [...(file.drops ?? []), ...drops] },
    cords,
    part: {
      what: 'drops',
      says: [
        n === 0
          ? 'No new drop is wanted.'
          : `${counted(n, 'drop')} for ${stalls(cords.length - proposal.added.length)}.`,
        ...(proposal.added.length > 0
          ? [`${stalls(proposal.added.length)} more from drops that are there and have room.`]
          : []),
      ],
      measure: { of: 'new drops', value: n, bound: proposal.bound, unit: '' },
      without: proposal.without.map(({ stall, says }) => ({ id: stall, says })),
    },
  };
}

/** What branches come from, or will: the middle of the panels that are there, else of the sources; null without either. */
function feedPoint(site: Site): Point2 | null {
  const panels = panelsOf(site);
  const from = panels.length > 0 ? panels : site.equipment.filter(({ kind }) => kind === 'source');
  if (from.length === 0) return null;
  const sum = from.reduce((all, { entry }): Point2 => [all[0] + entry[0], all[1] + entry[1]], [0, 0]);
  return [sum[0] / from.length, sum[1] / from.length];
}
