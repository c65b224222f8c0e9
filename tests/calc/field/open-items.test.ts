import { describe, expect, test } from 'vitest';
import { OPEN_KINDS, type OpenItem, openItems } from '../../../calc/field/open/open-items.ts';
import { alternativeOf } from '../../../calc/plan/compared/alternative.ts';
import { plan } from '../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { mergeMarks } from '../../../routing/site/records/merge.ts';
import { newMarks, type Saying } from '../../../routing/site/records/new-mark.ts';
import type { Mark, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { libraryLot } from './start-lot.ts';

const FILE = libraryLot();

let made = 0;
const written = (records: readonly Mark[], by: string, ...sayings: Saying[]): readonly Mark[] => [
  ...records,
  ...newMarks(records, sayings, { by, on: '2026-05-30' }, () => `m${++made}`),
];
function itemsOf(records: readonly Mark[], file: SiteFile = FILE): readonly OpenItem[] {
  const site = toSite({ ...file, records } as SiteFile);
  return openItems(site, plan(site), null);
}
const of = (items: readonly OpenItem[], kind: OpenItem['kind'], name?: string) =>
  items.filter((item) => item.kind === kind && (name === undefined || item.of === name));

describe('everything that is still open', () => {
  const fresh = itemsOf([]);

  test('at a lot that nobody has begun: its findings, each step and test, the whole checklist, what is assumed', () => {
    const site = toSite(FILE);
    const told = plan(site).findings.filter(({ severity }) => severity !== 'note');
    expect(of(fresh, 'finding')).toHaveLength(told.length);
    expect(of(fresh, 'step', 'D05')[0]?.says).toBe('not set');
    expect(of(fresh, 'step', 'EV05')[0]?.says).toBe('not pulled, not terminated');
    expect(of(fresh, 'test', 'EV05')[0]?.says).toBe('not tested');
    expect(of(fresh, 'check', 'D05')).toHaveLength(1);
    expect(of(fresh, 'conflict')).toEqual([]);
    expect(of(fresh, 'deviation')).toEqual([]);
    expect(of(fresh, 'assumption').length).toBeGreaterThan(10);
    expect(new Set(fresh.map(({ key }) => key)).size).toBe(fresh.length);
    // Kind by kind.
    const order = Object.keys(OPEN_KINDS);
    const places = fresh.map(({ kind }) => order.indexOf(kind));
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  test('loses what is done, and what was taken back comes back', () => {
    const done = written([], 'JB', { of: 'EV05', what: 'pulled' }, { of: 'EV05', what: 'tested' });
    expect(of(itemsOf(done), 'step', 'EV05')[0]?.says).toBe('not terminated');
    expect(of(itemsOf(done), 'test', 'EV05')).toEqual([]);
    const back = written(done, 'JB', { of: 'EV05', what: 'tested', gone: true });
    expect(of(itemsOf(back), 'test', 'EV05')).toHaveLength(1);
  });

  test('a deviation stays until who knew of it answers it, and opens again when it is measured anew', () => {
    const off = written([], 'JB', { of: 'D05', part: 'box', what: 'place', place: [54, 9, 11] });
    const [item] = of(itemsOf(off), 'deviation', 'D05');
    expect(item).toMatchObject({ by: 'JB', on: '2026-05-30', answer: { of: 'D05', part: 'box' } });
    const answered = written(off, 'RL', { ...item!.answer!, what: 'answered', text: 'stays: cord changed' });
    expect(of(itemsOf(answered), 'deviation', 'D05')).toEqual([]);
    const again = written(answered, 'JB', { of: 'D05', part: 'box', what: 'place', place: [55, 9, 11] });
    expect(of(itemsOf(again), 'deviation', 'D05')).toHaveLength(1);
    // An answer by somebody who had not seen what was measured answers nothing.
    const unaware = newMarks([], [{ ...item!.answer!, what: 'answered', text: 'fine' }], { by: 'X' }, () => 'x1');
    expect(of(itemsOf(mergeMarks(off, unaware)), 'deviation', 'D05')).toHaveLength(1);
  });

  test('conflicts of merged records are told with both sides, and go when somebody decides', () => {
    const his = written([], 'JB', { of: 'D05', what: 'note', text: 'beam' });
    const hers = written([], 'RL', { of: 'D05', what: 'note', text: 'pipe' });
    const merged = mergeMarks(his, hers);
    const [item] = of(itemsOf(merged), 'conflict');
    expect(item?.says).toMatch(/RL: pipe; JB: beam/);
    expect(of(itemsOf(written(merged, 'RL', { of: 'D05', what: 'note', text: 'pipe' })), 'conflict')).toEqual([]);
  });

  test('an assumption closes when it is confirmed at the value that it has, and opens when that changes', () => {
    const item = of(fresh, 'assumption').find(({ of: name }) => name === 'usual vehicle')!;
    const confirmed = written([], 'RL', { ...item.answer!, what: 'answered', text: 'owner, by letter' });
    expect(of(itemsOf(confirmed), 'assumption', 'usual vehicle')).toEqual([]);
    const changed = { ...FILE, rules: { ...FILE.rules, vehicle: 'pickup' } } as SiteFile;
    expect(of(itemsOf(confirmed, changed), 'assumption', 'usual vehicle')).toHaveLength(1);
  });

  test('what fails only as built is told beside what fails as drawn', () => {
    const far = written([], 'JB', { of: 'D05', part: 'box', what: 'place', place: [52, 30, 11] });
    const told = of(itemsOf(far), 'finding').filter(({ says }) => says.startsWith('As built: fails'));
    expect(told.length).toBeGreaterThan(0);
  });

  test('a quote that ran out before the day of the bid is open', () => {
    const quotes = [{ name: 'gear', material: 1000, covers: ['panelboard'], validUntil: '2026-01-31' }];
    const {
      site,
      plan: planned,
      cost,
    } = alternativeOf('lot', toSite(FILE), {
      ...INVENTED_LIST,
      bidDay: '2026-05-30',
      quotes,
    });
    expect(of(openItems(site, planned, cost), 'quote')).toEqual([
      expect.objectContaining({ of: 'gear', says: 'valid until 2026-01-31, and the bid is of 2026-05-30' }),
    ]);
  });
});
