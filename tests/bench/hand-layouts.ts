import { plan } from '../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../calc/prices/invented-list.ts';
import { propose } from '../../calc/propose/propose.ts';
import { costOf } from '../../calc/takeoff/bid/cost.ts';
import type { SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { HANDS } from '../calc/propose/hand/hands.ts';

/** What is proposed from the bare ground beside a careful hand's layout, dollars without overhead and margin. */
export function handLayouts() {
  return Object.entries(HANDS).map(([lot, of]) => {
    const { ground, hand } = of();
    const before = process.cpuUsage();
    const { file } = propose(ground, { what: 'all', cordsADrop: 1, prices: INVENTED_LIST });
    const seconds = process.cpuUsage(before).user / 1e6;
    return { lot, proposed: costIn(file), hand: costIn(hand), seconds, panels: panelsIn(file) };
  });
}

const costIn = (file: SiteFile): number => costOf(plan(toSite(file)).takeoff, INVENTED_LIST, 0).cost;

const panelsIn = ({ equipment = [] }: SiteFile): string =>
  equipment.flatMap(({ kind, mainAmps }) => (kind === 'panelboard' ? [`${mainAmps} A`] : [])).join(', ');
