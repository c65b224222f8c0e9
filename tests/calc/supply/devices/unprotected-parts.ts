import type { Finding } from '../../../../routing/site/rules/finding.ts';
import type { Feeder } from '../../../../routing/site/site.ts';
import { chargers, feeder, type Parts, panel, siteOf, source, supplied, transformer } from '../small-site.ts';

export const told = (parts: Parts, rule: string): readonly Finding[] =>
  supplied(siteOf(parts)).findings.filter((finding) => finding.rule === rule);

export const copper = (size: string, sets = 1): Feeder['conductor'] => ({
  size,
  metal: 'copper',
  sets,
  insulation: 'THWN-2',
});

/** 75 kVA, 480 to 208 V behind 125 A; at 30 °C, so that conductors have what their terminals allow. */
export const behind = (out: Partial<Feeder>, main: object = {}, cars = 3): Parts => ({
  equipment: [source(480), transformer('T1', { kva: 75 }), panel('P1', { busAmps: 400, ...main })],
  feeders: [
    feeder('SVC', 'T1', { breakerAmps: 125, conductor: copper('1') }),
    feeder('T1', 'P1', { conductor: copper('4/0'), breakerAmps: 225, length: 20, ...out }),
  ],
  chargers: chargers('P1', cars),
  rules: { ambientC: 30 },
});
