import { proposePedestals } from '../../routing/propose/drops/propose-pedestals.ts';
import { newIds } from '../../routing/site/new-id.ts';
import type { Drop, SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { counted } from '../../routing/words/counted.ts';
import type { PriceList } from '../prices/price-list.ts';
import { withChargers } from '../propose/drops/chargers.ts';
import type { CordToCome } from '../propose/drops/drops-part.ts';
import { panelsOf } from '../propose/feeding.ts';
import { lengthIn, placeIn } from '../propose/in-file.ts';
import { equipmentId, equipmentInFile } from '../propose/new-equipment.ts';
import { propose } from '../propose/propose.ts';
import { USUAL_DROP, USUAL_PANELBOARD, USUAL_PEDESTAL } from '../propose/usual.ts';
import { tablesOf } from '../tables/editions.ts';
import type { StudyMount } from './shape.ts';

/** A file with something drawn in it and what is to be said of it, or why that cannot be. */
export type LayoutOutcome =
  | { readonly ok: true; readonly file: SiteFile; readonly says: readonly string[] }
  | { readonly ok: false; readonly says: string };

const cannot = (says: string): LayoutOutcome => ({ ok: false, says });

/** Cords that hang from one new drop, or stand at one pedestal. */
const holdsOf = (mount: StudyMount): number => (mount.endsWith('pairs') ? 2 : 1);

/**
 * Drops or pedestals for some stalls, their chargers where a board stands, and raceways to them; the board is proposed
 * too where none stands.
 */
export function drawnLayout(
  file: SiteFile,
  wanted: ReadonlySet<string>,
  mount: StudyMount,
  amps: number,
  prices: PriceList,
  mayGoOn: () => boolean,
): LayoutOutcome {
  const hung = mount.startsWith('overhead') ? overhead(file, wanted, mount, prices) : pedestals(file, wanted, mount);
  if (!hung.ok) return hung;
  const left = wanted.size - new Set(hung.cords.map(({ stall }) => stall)).size;
  const says = [
    ...hung.says,
    ...(left > 0 ? [`${counted(left, 'stall')} of ${wanted.size} cannot be served so: no cord comes there.`] : []),
  ];
  let next = hung.file;
  if (panelsOf(toSite(next)).length === 0) {
    const whole = onProposedPanels(hung, mount, prices, mayGoOn);
    if (whole !== null) return { ...whole, file: withAmps(whole.file, amps), says: [...says, ...whole.says] };
    const stood = propose(next, { what: 'equipment', cordsADrop: holdsOf(mount), prices });
    if (panelsOf(toSite(stood.file)).length === 0)
      return cannot(stood.parts.flatMap((part) => part.says)[0] ?? 'No place was found for a panel.');
    next = stood.file;
    says.push(...stood.parts.flatMap((part) => part.says.filter(isFed)));
  }
  const charged = withChargers(next, hung.cords, new Map());
  return routed(withAmps(charged, amps), prices, says, mayGoOn);
}

/**
 * Panels, chargers and raceways for cords that hang already, as one proposal, which knows which cords each panel is for;
 * null where it would serve other stalls than these.
 */
function onProposedPanels(
  hung: Extract<Hung, { readonly ok: true }>,
  mount: StudyMount,
  prices: PriceList,
  mayGoOn: () => boolean,
): Extract<LayoutOutcome, { readonly ok: true }> | null {
  const wish = { what: 'all', cordsADrop: holdsOf(mount), prices, isBounded: false } as const;
  const { file, parts } = propose(hung.file, wish, QUIET, QUIET, mayGoOn);
  const served = new Set((file.chargers ?? []).flatMap(({ stalls }) => stalls));
  const isSame = hung.cords.every(({ stall }) => served.has(stall)) && served.size === hung.cords.length;
  if (!isSame || file.drops?.length !== hung.file.drops?.length || parts.some(({ without }) => without.length > 0))
    return null;
  return { ok: true, file, says: parts.flatMap((part) => part.says.filter(isFed)) };
}

/** Of what a proposal says, how its panels are fed. */
const isFed = (says: string): boolean => / feeds \S+ from | has no feeder/.test(says);

const QUIET = (): void => {};

/** Raceways for all that has no run and no way. */
export function routed(
  file: SiteFile,
  prices: PriceList,
  says: readonly string[],
  mayGoOn: () => boolean = () => true,
): LayoutOutcome {
  const wish = { what: 'raceways', cordsADrop: 1, prices, isBounded: false } as const;
  const { file: laid, parts } = propose(file, wish, QUIET, QUIET, mayGoOn);
  const without = parts.flatMap((part) => part.without);
  return without.length === 0 ? { ok: true, file: laid, says } : cannot(without[0]!.says);
}

export const withAmps = (file: SiteFile, amps: number): SiteFile => ({
  ...file,
  chargers: (file.chargers ?? []).map((charger) => ({ ...charger, amps })),
});

type Hung =
  | {
      readonly ok: true;
      readonly file: SiteFile;
      readonly cords: readonly CordToCome[];
      readonly says: readonly string[];
    }
  | { readonly ok: false; readonly says: string };

/** Drops under the steel, with retractors. */
function overhead(file: SiteFile, wanted: ReadonlySet<string>, mount: StudyMount, prices: PriceList): Hung {
  if ((file.members ?? []).length === 0)
    return { ok: false, says: 'No steel is drawn that drops and their raceways could hang from.' };
  const proposed = propose(withStandIn(file), { what: 'drops', cordsADrop: holdsOf(mount), prices });
  const cords = cordsOf(file, proposed.file, wanted);
  if (cords.length === 0)
    return { ok: false, says: proposed.parts.flatMap(({ without }) => without)[0]?.says ?? 'No drop reaches a stall.' };
  const kept = new Set(cords.map(({ drop }) => drop));
  return {
    ok: true,
    cords,
    says: [],
    file: { ...file, drops: (proposed.file.drops ?? []).filter(({ id }) => kept.has(id)) },
  };
}

/** With a board where the supply begins where none stands yet: which drop is for which stall is told by chargers. */
function withStandIn(file: SiteFile): SiteFile {
  const site = toSite(file);
  if (panelsOf(site).length > 0) return file;
  const begins = (file.equipment ?? []).find(({ kind }) => kind === 'service') ?? file.equipment?.[0];
  const { at, entry } = begins ?? { at: [0, 0] as [number, number], entry: [0, 0, 0] as [number, number, number] };
  const { size, volts, phases } = USUAL_PANELBOARD;
  const standIn = equipmentInFile(
    equipmentId(file, 'P'),
    { kind: 'panelboard', size: [...size], volts, phases, at: [0, 0], entry: [0, 0, 0] },
    file.units,
  );
  return { ...file, equipment: [...(file.equipment ?? []), { ...standIn, at, entry }] };
}

/** Which new drop is for which stall: by the chargers that were proposed with them. */
const cordsOf = (before: SiteFile, after: SiteFile, wanted: ReadonlySet<string>): readonly CordToCome[] =>
  (after.chargers ?? [])
    .slice(before.chargers?.length ?? 0)
    .flatMap(({ drop, stalls }) => stalls.filter((stall) => wanted.has(stall)).map((stall) => ({ drop, stall })));

/** Pedestals beside the cars, their cords on the ground; at a lower box where a stall is not reached otherwise. */
function pedestals(file: SiteFile, wanted: ReadonlySet<string>, mount: StudyMount): Hung {
  const site = toSite(file);
  const cord = Math.min(USUAL_DROP.cord, site.rules.cordLimit);
  const holds = holdsOf(mount);
  const at = (elevation: number) =>
    proposePedestals(site, wanted, { cord, elevation, holds, restHeight: Math.min(elevation, USUAL_DROP.restHeight) });
  const usual = Math.min(USUAL_PEDESTAL.elevation, site.rules.pedestalHeight);
  const first = at(usual);
  const isLow = first.without.length > 0;
  // Connectors rest, and cords leave a pedestal, no lower than this outdoors.
  const lowest = tablesOf(site.rules).vehicleSupply.couplingOutdoorsIn / 12;
  const low = isLow ? at(lowest) : first;
  const isBetter = isLow && low.without.length < first.without.length;
  const [proposal, elevation] = isBetter ? [low, lowest] : [first, usual];
  if (proposal.pedestals.length === 0)
    return {
      ok: false,
      says: `From no place beside the cars a cord of ${cord} ft on the ground comes round them to every inlet.`,
    };
  const ids = newIds(file, 'D', proposal.pedestals.length);
  const { units } = file;
  const drops = proposal.pedestals.map(
    ({ box }, i): Drop => ({
      id: ids[i]!,
      box: placeIn(units, box),
      cord: lengthIn(units, cord),
      mount: 'pedestal',
      restHeight: lengthIn(units, Math.min(elevation, USUAL_DROP.restHeight)),
      ...(holds > 1 && { holds }),
    }),
  );
  return {
    ok: true,
    file: { ...file, drops: [...(file.drops ?? []), ...drops] },
    cords: proposal.pedestals.flatMap(({ stalls }, i) => stalls.map((stall) => ({ drop: ids[i]!, stall }))),
    says: isBetter ? ['Cords leave the pedestals 2 ft up: from higher they do not come round the cars.'] : [],
  };
}
