import { toSite } from '../../routing/site/to-site.ts';
import type { PriceList } from '../prices/price-list.ts';
import { panelsOf } from '../propose/feeding.ts';
import { feederProspects } from '../supply/feeders/feeder-prospects.ts';
import type { StudyBase } from './base.ts';
import { choicesIn, type FeederChoice, feederChoices, SIZES } from './feeder-choices.ts';
import { inAluminum } from './in-aluminum.ts';
import { drawnLayout, type LayoutOutcome, withAmps } from './layouts.ts';
import { onPanels } from './on-panels.ts';
import { type MayGoOn, MOUNT_WORDS, STUDY_MOUNTS, type StudyMount } from './shape.ts';
import { oneNewFeeder, standingFeeders } from './supplies.ts';
import { usedBy } from './used-by.ts';

/** A way to be drawn. */
export interface Candidate {
  readonly mount: string;
  readonly supply: string;
  readonly amps: number;
  /** The same as another with its new feeders of aluminum. */
  readonly isOfAluminum?: true;
  readonly make: (mayGoOn: () => boolean) => LayoutOutcome;
}

export interface Candidates {
  readonly list: readonly Candidate[];
  /** Mounts and feeders of which no way can be. */
  readonly cannot: readonly { readonly name: string; readonly says: string }[];
  readonly looked: number;
  readonly leftOut: readonly string[];
}

/** No more standing feeders than these are gone through. */
const MOST_FEEDERS = 2;

/** Share of the time of a study in which drops, pedestals and their raceways are laid out, which ways then share. */
export const LAYING_OUT = 0.5;

/** The ways that are worth drawing in a lot; `tell` hears which mount is being laid out. */
export function candidatesOf(
  base: StudyBase,
  prices: PriceList,
  tell: (says: string) => void,
  mayGoOn: MayGoOn,
): Candidates {
  const list: Candidate[] = [];
  const cannot: { name: string; says: string }[] = [];
  let looked = 0;
  let first: StudyMount | null = null;
  const drops = new Map<StudyMount, number>();
  const left = { transformers: 0, sizes: 0, mounts: 0 };
  for (const [place, mount] of STUDY_MOUNTS.entries()) {
    if (first !== null && !mayGoOn(LAYING_OUT)) {
      cannot.push({ name: MOUNT_WORDS[mount], says: 'There was no time left to lay it out.' });
      continue;
    }
    tell(`laying out: ${MOUNT_WORDS[mount]}`);
    const until = (LAYING_OUT * (place + 1)) / STUDY_MOUNTS.length;
    const layout = drawnLayout(base.file, base.wanted, mount, base.amps, prices, () => mayGoOn(until));
    if (!layout.ok) {
      cannot.push({ name: MOUNT_WORDS[mount], says: layout.says });
      continue;
    }
    const one = mount.endsWith('pairs') ? drops.get(STUDY_MOUNTS[STUDY_MOUNTS.indexOf(mount) - 1]!) : undefined;
    const many = layout.file.drops?.length ?? 0;
    drops.set(mount, many);
    if (one !== undefined && many >= one) {
      cannot.push({ name: MOUNT_WORDS[mount], says: 'From no place do two cords come to two stalls.' });
      continue;
    }
    first ??= mount;
    const isFirst = mount === first;
    const own = panelsOf(base.site).length > 0 ? onStanding(base, layout, mount, isFirst, prices) : null;
    const fresh = onNew(base, layout, mount, isFirst, prices, own === null);
    const drawn = [...(own?.list ?? []), ...fresh];
    const others = fresh.filter(({ isOfAluminum }) => isOfAluminum).length;
    looked += (own?.looked ?? 0) + 2 * SIZES.length + others;
    cannot.push(...(isFirst ? (own?.cannot ?? []) : []));
    if (isFirst) {
      left.transformers += own?.leftTransformers ?? 0;
      left.sizes += (own?.leftSizes ?? 0) + 2 * SIZES.length - (fresh.length - others);
    } else left.mounts += (own?.looked ?? 0) + 2 * SIZES.length - drawn.length;
    list.push(...drawn);
  }
  return {
    list,
    cannot,
    looked,
    leftOut: [
      ...(left.transformers > 0
        ? [
            `${left.transformers} with a larger transformer or more volts than those at which all run at full rate, or smaller ones behind which fewer do.`,
          ]
        : []),
      ...(left.sizes > 0
        ? [
            `${left.sizes} with chargers of other ratings, of ${SIZES.join(', ')} A: no more of them run at full rate, or none gets more.`,
          ]
        : []),
      ...(left.mounts > 0 && first
        ? [
            `${left.mounts} that differ from one that is drawn “${MOUNT_WORDS[first]}” by the mount alone: the others are drawn with each supply at its least.`,
          ]
        : []),
    ],
  };
}

type Laid = Extract<LayoutOutcome, { readonly ok: true }>;

interface OnStanding {
  readonly list: readonly Candidate[];
  readonly cannot: readonly { readonly name: string; readonly says: string }[];
  readonly looked: number;
  readonly leftTransformers: number;
  readonly leftSizes: number;
}

/** Ways by what stands or is drawn ahead of the boards. */
function onStanding(base: StudyBase, layout: Laid, mount: StudyMount, isFirst: boolean, prices: PriceList): OnStanding {
  const { known, unknown } = standingFeeders(toSite(layout.file));
  const cannot = unknown.map((says) => ({ name: 'A standing feeder', says }));
  if (known.length === 0)
    return {
      list: [{ mount: MOUNT_WORDS[mount], supply: 'supply as drawn', amps: base.amps, make: () => layout }],
      cannot,
      looked: 1,
      leftTransformers: 0,
      leftSizes: 0,
    };
  const list: Candidate[] = [];
  let [looked, leftTransformers, leftSizes] = [0, 0, 0];
  for (const standing of known.slice(0, MOST_FEEDERS)) {
    const { id } = standing.feeder;
    const bySize = new Map(
      [...new Set([...SIZES, base.amps])].map((amps) => {
        const sized = feederProspects(toSite(withAmps(layout.file, amps))).find(({ feeder }) => feeder.id === id);
        return [amps, sized?.ok ? sized.ways : []];
      }),
    );
    const all = feederChoices(bySize, base.amps);
    const chosen = all.filter(({ isMain }) => isFirst || isMain);
    for (const ways of bySize.values()) looked += choicesIn(ways);
    const same = choicesIn(bySize.get(base.amps) ?? []);
    const others = [...bySize].reduce((sum, [amps, ways]) => sum + (amps === base.amps ? 0 : choicesIn(ways)), 0);
    const alike = all.filter(({ amps, only }) => amps === base.amps && only === null).length;
    leftTransformers += same - alike;
    leftSizes += others - all.filter(({ amps }) => amps !== base.amps).length;
    for (const choice of chosen)
      list.push({
        mount: MOUNT_WORDS[mount],
        supply: candidateWords(id, choice),
        amps: choice.amps,
        make: (mayGoOn) => usedBy(base, layout, standing, choice, prices, mayGoOn),
      });
  }
  return { list, cannot, looked, leftTransformers, leftSizes };
}

/** A way to use a feeder in words. */
export function candidateWords(feeder: string, { way, transformer, only }: FeederChoice): string {
  const volts = way.asItIs ? 'as it is' : `at ${way.volts} V`;
  const kva = way.kva === null ? '' : `, ${way.kva} kVA ${transformer}`;
  const held = way.managedAmps === null ? '' : `, shared limit of ${way.managedAmps} A`;
  return `${feeder} ${volts}${kva}${held}${only === null ? '' : `, only ${only} chargers`}`;
}

/** Ways with new feeders: to one board, or to panels where branches and feeders are shortest. */
function onNew(
  base: StudyBase,
  layout: Laid,
  mount: StudyMount,
  isFirst: boolean,
  prices: PriceList,
  isOnNew: boolean,
): readonly Candidate[] {
  const words = { mount: MOUNT_WORDS[mount] };
  const board = (amps: number): Candidate => ({
    ...words,
    supply: 'new feeder, one board',
    amps,
    make: () => oneNewFeeder(layout.file, base, amps, prices),
  });
  let proposed: LayoutOutcome | null = isOnNew ? layout : null;
  const panels: Candidate = {
    ...words,
    supply: 'new feeders, panels as proposed',
    amps: base.amps,
    make: (mayGoOn) => {
      proposed ??= onPanels(base, mount, prices, mayGoOn);
      return proposed;
    },
  };
  const aluminum = (one: Candidate, supply: string): Candidate => ({
    ...one,
    supply,
    isOfAluminum: true,
    make: (mayGoOn) => inAluminum(base, one.make(mayGoOn)),
  });
  const ofAluminum =
    isFirst && base.site.rules.metal !== 'aluminum'
      ? [
          aluminum(board(base.amps), 'new feeder of aluminum, one board'),
          aluminum(panels, 'new feeders of aluminum, panels as proposed'),
        ]
      : [];
  const sizes = isFirst ? [base.amps, ...[SIZES[0], SIZES.at(-1)!].filter((amps) => amps !== base.amps)] : [base.amps];
  return [
    ...(isOnNew ? [panels, board(base.amps)] : [...sizes.map(board), ...(isFirst ? [panels] : [])]),
    ...ofAluminum,
  ];
}
