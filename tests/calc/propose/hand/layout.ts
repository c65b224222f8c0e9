import { designOf } from '../../../../calc/branches/design.ts';
import { feederConductor } from '../../../../calc/supply/feeders/feeder-conductor.ts';
import type { Charger, Drop, Point2, Raceway, SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { DEPTH, PITCH, WIDTH } from './lots.ts';

type Feeder = NonNullable<SiteFile['feeders']>[number];
type Equipment = NonNullable<SiteFile['equipment']>[number];

/** A panel as a careful hand sets it: its size, where it stands, and the canopies that hang on it. */
export interface HandPanel {
  readonly at: Point2;
  readonly mainAmps: number;
  readonly busAmps: number;
  readonly spaces: number;
  readonly canopies: readonly number[];
  /** Places along each row that hang on it, from and to; all where it is not said. */
  readonly stalls?: readonly [from: number, to: number];
  /** Of the transformer that it hangs on, where the source is of a higher voltage. */
  readonly transformer?: string;
}

export interface HandTransformer {
  readonly id: string;
  readonly at: Point2;
  readonly kva: number;
  readonly breakerAmps: number;
  readonly sets?: number;
}

/** Raceways of branches run here, and drops hang from it, feet. */
const HIGH = 11;
/** From the middle of a double row to a drop, and from the middle of an aisle between single rows. */
const OUT = { double: 9, facing: 21 } as const;
/** Over an open aisle. */
const OVER = 14;
const BURIED = -2;

/**
 * A lot of double rows as a careful hand lays it out: one even line of drops each side of a canopy, a drop on the stripe of
 * each stall that is nearer to the panels, pairs facing; one trunk down the middle with a rung at each pair; the feeders
 * in one trench to panels at the end of the rows.
 */
export function handLayout(
  lot: SiteFile,
  panels: readonly HandPanel[],
  transformers: readonly HandTransformer[] = [],
): SiteFile {
  const isFacing = lot.columns === undefined;
  const out = isFacing ? OUT.facing : OUT.double;
  const [source] = lot.equipment!;
  const { rules } = toSite(lot);
  const conductor = (amps: number, sets?: number): Feeder['conductor'] => {
    const one = feederConductor(designOf(rules).tables, amps, rules, rules.placeAmbientC.underground);
    return { ...one, metal: 'copper', sets: sets ?? one.sets };
  };
  const drops: Drop[] = [];
  const chargers: Charger[] = [];
  const raceways: Raceway[] = [];
  const feeders: Feeder[] = [];
  const equipment: Equipment[] = [...lot.equipment!];
  const bury = (from: readonly [number, number, number], to: readonly [number, number, number]): void => {
    const path = [
      from,
      [from[0], from[1], BURIED],
      ...(from[1] !== to[1] && from[0] !== to[0] ? [[to[0], from[1], BURIED]] : []),
      [to[0], to[1], BURIED],
      to,
    ].map(([x, y, z]): [number, number, number] => [x!, y!, z!]);
    raceways.push({ id: `FW${feeders.length}`, path, method: 'PVC40', place: 'underground' });
  };
  for (const { id, at, kva, breakerAmps, sets } of transformers) {
    const entry: [number, number, number] = [at[0], at[1], 4];
    equipment.push({
      id,
      kind: 'transformer',
      at: [...at],
      size: [4, 3, 5],
      entry,
      phases: 3,
      kva,
      impedancePercent: 5,
      primaryVolts: source!.volts!,
      secondaryVolts: 208,
    });
    feeders.push({ id: `F${id}`, from: 'U1', to: id, conductor: conductor(breakerAmps, sets), breakerAmps });
    bury(source!.entry, entry);
  }
  panels.forEach(({ at, canopies, transformer, stalls = [0, Number.POSITIVE_INFINITY], ...rest }, p) => {
    const id = `P${p + 1}`;
    const entry: [number, number, number] = [at[0], at[1], 6];
    equipment.push({
      id,
      kind: 'panelboard',
      at: [...at],
      size: [3, 1, 6],
      entry,
      volts: 208,
      phases: 3,
      workingSpace: 3,
      ...rest,
    });
    const above = equipment.find((one) => one.id === (transformer ?? 'U1'))!;
    feeders.push({
      id: `F${id}`,
      from: above.id,
      to: id,
      conductor: conductor(rest.mainAmps),
      breakerAmps: rest.mainAmps,
    });
    bury(above.entry, entry);
    for (const canopy of canopies) {
      const y = canopy * PITCH;
      const own = lot.stalls!.filter((stall) => {
        const along = Math.floor(stall.at[0] / WIDTH);
        return Math.abs(stall.at[1] - y) <= DEPTH && along >= stalls[0] && along < stalls[1];
      });
      const xs = [...new Set(own.map((stall) => stall.at[0] - WIDTH / 2))].sort((a, b) => a - b);
      for (const stall of own) {
        const x = stall.at[0] - WIDTH / 2;
        const drop = `D${stall.id}`;
        drops.push({
          id: drop,
          box: [x, y + Math.sign(stall.at[1] - y) * out, HIGH],
          retractor: [x, y + Math.sign(stall.at[1] - y) * out, HIGH - 1],
          cord: 25,
          restHeight: 3,
        });
        chargers.push({
          id: `E${stall.id}`,
          drop,
          stalls: [stall.id],
          from: id,
          amps: 32,
          volts: 208,
          phases: 1,
          pilot: true,
        });
      }
      const last = xs.at(-1)!;
      const [ax, ay] = at;
      const hang = (name: string, path: [number, number, number][]): void => {
        raceways.push({ id: name, path, method: 'EMT', place: 'overhead' });
      };
      if (isFacing) {
        // A trunk along each row, over the aisle at the end.
        for (const side of [out, -out])
          hang(`T${side}`, [entry, [ax, ay, OVER], [ax, side, OVER], [ax, side, HIGH], [last, side, HIGH]]);
        continue;
      }
      const aside: [number, number, number][] = ay === y ? [] : [[ax, y, HIGH]];
      hang(`T${p + 1}.${canopy}`, [entry, [ax, ay, HIGH], ...aside, [last, y, HIGH]]);
      for (const x of xs)
        hang(`R${canopy}.${x}`, [
          [x, y - out, HIGH],
          [x, y + out, HIGH],
        ]);
    }
  });
  return { ...lot, equipment, feeders, drops, chargers, raceways };
}
