import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { priceChange } from '../../../calc/takeoff/bid/price-change.ts';
import type { Raceway, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { draftPriceWords } from '../../../web/words/draft-price.ts';

const R1: Raceway = {
  id: 'R1',
  path: [
    [0, 0, 11],
    [40, 0, 11],
  ],
  method: 'EMT',
  place: 'overhead',
};
const EMPTY: SiteFile = { format: 'overrow/site', version: 1, units: 'ft', name: 'a lot' };
const PANEL: SiteFile = {
  ...EMPTY,
  equipment: [
    {
      id: 'P1',
      kind: 'panelboard',
      at: [0, 0],
      size: [3, 1, 6],
      entry: [0, 0, 11],
      volts: 208,
      phases: 3,
      busAmps: 400,
    },
  ],
};
const FED: SiteFile = {
  ...PANEL,
  drops: [{ id: 'D1', box: [40, 0, 11], cord: 25 }],
  chargers: [{ id: 'EV1', drop: 'D1', stalls: [], from: 'P1', amps: 32, volts: 208, phases: 1 }],
};

/** What is said while a raceway is drawn on a site. */
function says(file: SiteFile, raceway: Raceway = R1, list = INVENTED_LIST): string {
  const [before, after] = [toSite(file), toSite({ ...file, raceways: [raceway] })];
  const [was, now] = [plan(before), plan(after)];
  const change = priceChange(was.takeoff, now.takeoff, list);
  const carries = !change.groundOnly || now.runs.some(({ raceways }) => raceways.includes('R1'));
  return draftPriceWords(change, { raceway, site: after, carries }, list).join(' ');
}

test('before there is equipment, a raceway is said not to be counted, and why', () => {
  expect(says(EMPTY)).toMatch(
    /^No equipment stands yet, so nothing runs in it, and its conduit is not counted: as one bare 3\/4" EMT it comes to \$\d+ without fittings\.$/,
  );
});

test('before there is a charger, and where no circuit comes that way, likewise', () => {
  expect(says(PANEL)).toMatch(/^No charger hangs yet, so nothing runs in it/);
  const aside: Raceway = {
    ...R1,
    path: [
      [0, 80, 11],
      [40, 80, 11],
    ],
  };
  expect(says(FED, aside)).toMatch(/^No circuit or feeder runs in it, and its conduit is not counted/);
});

test('underground its trench is counted though nothing runs in it, and said to be all', () => {
  const buried: Raceway = {
    ...R1,
    path: [
      [0, 0, -2],
      [40, 0, -2],
    ],
    method: 'PVC40',
    place: 'underground',
  };
  expect(says(EMPTY, buried)).toMatch(
    /^Adds \$[\d,]+ by .+, for digging and drilling alone\. No equipment stands yet.+ 3\/4" PVC40 /,
  );
});

test('with a circuit in it, what it adds is said alone', () => {
  expect(says(FED)).toMatch(/^Adds \$[\d,]+ by [^.]+\.$/);
});

test('another method adds another sum, a tray has no trade size, and what has no price is named', () => {
  expect(says(FED, { ...R1, method: 'RMC' })).not.toBe(says(FED));
  expect(says(EMPTY, { ...R1, method: 'tray' })).toContain('as a bare tray it comes to');
  const bare = { ...INVENTED_LIST, rows: INVENTED_LIST.rows.filter(({ item }) => item !== 'raceway') };
  expect(says(EMPTY, R1, bare)).toMatch(/and its conduit is not counted\.$/);
  expect(says(FED, R1, bare)).toContain('The list has no price for raceway, EMT ');
});
