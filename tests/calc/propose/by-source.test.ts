import { expect, test } from 'vitest';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { propose } from '../../../calc/propose/propose.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { doubleRows } from './hand/lots.ts';
import { failing } from './propose-parts.ts';

type Equipment = NonNullable<SiteFile['equipment']>[number];

/** Four stalls with a source of 208 V and one of 480 V beside it, so far away. */
function lot(away: number): SiteFile {
  const ground = doubleRows({ along: 2, canopies: 1, volts: 208, away });
  const [low] = ground.equipment as [Equipment];
  const high: Equipment = { ...low, id: 'U2', at: [-away, 20], entry: [-away, 20, 3], volts: 480 };
  return { ...ground, equipment: [low, high] };
}

const only = (file: SiteFile, id: string): SiteFile => ({
  ...file,
  equipment: file.equipment!.filter((one) => one.id === id),
});

const whole = (file: SiteFile) =>
  propose(
    file,
    { what: 'all', cordsADrop: 1, prices: INVENTED_LIST },
    () => {},
    () => {},
    () => false,
  );

test.each([
  ['near', 40],
  ['far', 1500],
] as const)(
  '%s the sources of 208 V and of 480 V are both weighed whole: the cheaper feeds, and the other is told',
  (_, away) => {
    const file = lot(away);
    const found = whole(file);
    const each = (['U1', 'U2'] as const).map((id) => ({ id, ...whole(only(file, id)) }));
    const [best, other] = each.toSorted((a, b) => a.fails! - b.fails! || a.dollars! - b.dollars!) as [
      (typeof each)[number],
      (typeof each)[number],
    ];
    expect(found.fails).toBe(best.fails);
    expect(found.dollars).toBeCloseTo(best.dollars!, 2);
    expect(failing(found.file)).toEqual(failing(best.file));
    expect(found.file.feeders!.some(({ from }) => from === best.id)).toBe(true);
    expect(found.file.feeders!.some(({ from }) => from === other.id)).toBe(false);
    const says = found.parts.flatMap((part) => part.says).find((one) => one.includes('was looked at too'))!;
    expect(says).toContain(`${best.id}, `);
    const more = Math.round(Math.abs(other.dollars! - best.dollars!)).toLocaleString('en-US');
    expect(says).toContain(`about $${more} ${other.dollars! < best.dollars! ? 'less' : 'more'}`);
  },
);

test('near it is that of 208 V, and far that of 480 V', () => {
  const fedBy = (away: number) =>
    propose(lot(away), { what: 'equipment', cordsADrop: 1, prices: INVENTED_LIST }).file.feeders!.map(
      ({ from }) => from,
    );
  expect(fedBy(40)).toContain('U1');
  expect(fedBy(1500)).toContain('U2');
});
