import { plan } from '../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../calc/prices/invented-list.ts';
import { propose } from '../../calc/propose/propose.ts';
import { costOf } from '../../calc/takeoff/bid/cost.ts';
import type { SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { bareLot } from './bare-lot.ts';
import { fleetYard } from './samples/fleet-yard.ts';

/** The fleet yard with its equipment, and nothing that hangs or leads there. */
function yard(): SiteFile {
  const { drops, chargers, raceways, ...rest } = fleetYard();
  return rest;
}

/** All that is proposed for large lots: processor seconds, which a busy machine stretches less than the clock, and dollars. */
export function wholeProposals() {
  return [
    ['fleet yard, two panels that stand', yard()],
    ['1,200 stalls, a source', bareLot(1200)],
  ].map(([lot, ground]) => {
    const before = process.cpuUsage();
    const { file } = propose(ground as SiteFile, { what: 'all', cordsADrop: 1, prices: INVENTED_LIST });
    const seconds = process.cpuUsage(before).user / 1e6;
    const { takeoff, findings } = plan(toSite(file));
    return {
      lot: lot as string,
      seconds,
      dollars: costOf(takeoff, INVENTED_LIST, 0).cost,
      panels: file.equipment!.filter(({ kind }) => kind === 'panelboard').length,
      fails: findings.filter(({ severity }) => severity === 'fail').length,
    };
  });
}
