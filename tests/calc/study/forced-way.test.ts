import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { startSite } from '../../../calc/propose/start-site.ts';
import { study } from '../../../calc/study/study.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';

/** Two stalls, and a service that stands and interrupts less than the utility gives there. */
function weakService(): SiteFile {
  const start = startSite({ name: 'Two stalls', stalls: 2, rows: 1 });
  return {
    ...start,
    equipment: [
      ...start.equipment!,
      {
        id: 'SE1',
        kind: 'service',
        at: [-30, 0],
        size: [4, 2, 7],
        entry: [-30, 0, 0],
        volts: 208,
        phases: 3,
        busAmps: 800,
        mainAmps: 800,
        workingSpace: 3.5,
        electrode: 'rods',
        interruptingAmps: 10_000,
        existing: true,
      },
    ],
    feeders: [
      {
        id: 'F0',
        from: 'U1',
        to: 'SE1',
        conductor: { size: '500', metal: 'copper', sets: 3, insulation: 'THWN-2' },
        raceway: 'PVC40',
        length: 12,
        breakerAmps: 800,
        existing: true,
      },
    ],
  };
}

describe('a lot that forces a failing finding', () => {
  const studied = study(weakService(), { prices: INVENTED_LIST, stayHours: 4, day: null });
  if (!studied.ok) throw new Error(studied.says);
  const { ways } = studied.study;

  test('has it in each way, and each says what forces it', () => {
    expect(ways.length).toBeGreaterThan(1);
    for (const { file, forced, figures } of ways) {
      const fails = plan(toSite(file)).findings.filter(({ severity }) => severity === 'fail');
      expect(fails.map(({ rule, about }) => [rule, about])).toEqual([['interrupting-rating', ['SE1']]]);
      expect(forced.map(({ finding, by }) => [finding.rule, by])).toEqual([
        ['interrupting-rating', 'the lot has it as it stands, before any way is drawn'],
      ]);
      expect(figures.fails).toBe(1);
    }
  });

  test('is fed from its service, which is not bought again', () => {
    for (const { file } of ways) {
      const site = toSite(file);
      expect(site.feeders.some(({ from }) => from === 'SE1')).toBe(true);
      expect(plan(site).takeoff.some(({ item }) => item === 'service equipment')).toBe(false);
    }
  });
});
