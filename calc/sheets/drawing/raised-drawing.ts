import { addTo } from '../../../routing/lists/grouping.ts';
import { feederRoutesOf } from '../../../routing/network/feeder-routes.ts';
import { membersNear, steelOf } from '../../../routing/network/support/steel-near.ts';
import { type Box, boxesMeet, boxOf } from '../../../routing/plane/box.ts';
import { direction } from '../../../routing/plane/direction.ts';
import { inPlan } from '../../../routing/plane/space.ts';
import { placedKind } from '../../../routing/site/kinds/kinds.ts';
import { byId } from '../../../routing/site/look-up.ts';
import { stallRectangle } from '../../../routing/site/place/stall-rectangle.ts';
import { workingSpaceOf } from '../../../routing/site/place/working-space.ts';
import type { Feeder, Point2, Point3, Site } from '../../../routing/site/site.ts';
import { vehicleOf } from '../../../routing/standing/parked.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import { COLUMN_REACH, columnBlock, columnTop, equipmentBlock, vehicleBlock } from '../../space/block.ts';
import { cordAtRest, cordOut } from '../../space/cord-shape.ts';
import { type Hiding, hidingBy, isCovered, seenParts } from '../../space/hidden.ts';
import { raisedAt, type SeenBlock, seenBlock } from '../../space/oblique.ts';
import { tablesOf } from '../../tables/editions.ts';
import { leastWorkingSpace } from '../../tables/equipment-of.ts';
import type { Drawing, DrawnItem } from './drawing.ts';
import { racewayLayers } from './existing-raceways.ts';
import { extentOf } from './extent.ts';
import { LARGE, lineItem, textItem } from './items.ts';
import { feederLayer, type LayerName } from './layers.ts';

/**
 * The site raised, as a drawing: a military oblique, in which the plan stays true to scale and heights are drawn straight
 * up. Lines on the ground and of blocks are left out where a block hides them; what hangs is seen whole. `within` leaves
 * out what lies outside it in plan.
 */
export function raisedDrawing(site: Site, plan: Plan, within?: Box): Drawing {
  const shown = within === undefined ? site : siteWithin(site, within);
  const blocks = blocksOf(shown, site);
  const hiding = hidingBy(blocks);
  const items = [
    ...onGround(shown, hiding),
    ...blocks.flatMap((one) => blockLines(one, hiding)),
    ...hanging(shown, site, plan, within),
    ...names(shown, hiding),
  ];
  return { title: `${site.name}, raised`, items, extent: extentOf(items) };
}

type Shown = Pick<
  Site,
  'stalls' | 'columns' | 'members' | 'aisles' | 'equipment' | 'raceways' | 'pullpoints' | 'drops'
> &
  Pick<Site, 'rules' | 'chargers'>;

function siteWithin(site: Site, within: Box): Shown {
  const lists = ['stalls', 'columns', 'members', 'aisles', 'equipment', 'raceways', 'pullpoints', 'drops'] as const;
  const kept = lists.map((list) => {
    const { points } = placedKind(list)!;
    return [list, site[list].filter((one) => boxesMeet(boxOf(points(one as never)), within))] as const;
  });
  return { ...site, ...Object.fromEntries(kept) };
}

function blocksOf({ stalls, columns, equipment, rules }: Shown, site: Site): readonly SeenBlock[] {
  return [
    ...stalls.map((stall) => vehicleBlock(stall, vehicleOf(stall, site), rules.headClearance)),
    ...columns.map((column) =>
      columnBlock(column, columnTop(column, membersNear(steelOf(site.members), boxOf([column.at]), COLUMN_REACH))),
    ),
    ...equipment.map(equipmentBlock),
  ].map(seenBlock);
}

const LAYER_OF = { stalls: 'vehicles', columns: 'columns', equipment: 'equipment' } as const;

const blockLines = (one: SeenBlock, hiding: Hiding): DrawnItem[] =>
  one.edges.flatMap(([a, b]) => seenParts(a, b, hiding, one).map((part) => lineItem(LAYER_OF[one.block.list], part)));

function onGround({ stalls, aisles, equipment, rules }: Shown, hiding: Hiding): DrawnItem[] {
  const ring = (layer: LayerName, corners: readonly Point2[]): DrawnItem[] =>
    corners.flatMap((at, i) =>
      seenParts(at, corners[(i + 1) % corners.length]!, hiding).map((part) => lineItem(layer, part)),
    );
  const least = leastWorkingSpace(tablesOf(rules));
  return [
    ...aisles.flatMap(({ outline }) => ring('aisles', outline)),
    ...stalls.flatMap((stall) => ring('stalls', stallRectangle(stall))),
    ...equipment.flatMap((one) => ring('workingSpace', workingSpaceOf(one, least) ?? [])),
  ];
}

function hanging(shown: Shown, site: Site, plan: Plan, within: Box | undefined): DrawnItem[] {
  const up = (layer: LayerName, path: readonly Point3[]): DrawnItem =>
    lineItem(
      layer,
      path.map((at) => raisedAt(at)),
    );
  const symbol = (
    layer: 'drops' | 'pullPoints',
    kind: 'box' | 'retractor' | 'pull-point' | 'junction' | 'handhole',
    at: Point3,
    of: string,
  ): DrawnItem => ({ kind: 'symbol', layer, symbol: kind, at: raisedAt(at), z: at[2], of });
  const layerOf = racewayLayers(site, plan);
  const buried = new Set(plan.handholes.map(({ id }) => id));
  const junctions = plan.boxes.filter(
    ({ kind, at }) => kind === 'junction' && (!within || boxesMeet(boxOf([inPlan(at)]), within)),
  );
  return [
    ...shown.members.map(({ from, to }) => up('framing', [from, to])),
    ...straightFeeders(site, within).map(({ feeder, way }) => up(feederLayer(feeder), way)),
    ...shown.raceways.map((raceway) => up(layerOf(raceway), raceway.path)),
    ...taps(plan, within).map((path) => up('raceways', path)),
    ...cords(shown, plan).map((path) => up('cords', path)),
    ...shown.pullpoints.map(({ id, at }) => symbol('pullPoints', buried.has(id) ? 'handhole' : 'pull-point', at, id)),
    ...junctions.map(({ id, at }) => symbol('pullPoints', buried.has(id) ? 'handhole' : 'junction', at, id)),
    ...shown.drops.flatMap(({ id, box, retractor }) => [
      symbol('drops', 'box', box, id),
      ...(retractor ? [up('drops', [box, retractor]), symbol('drops', 'retractor', retractor, id)] : []),
    ]),
  ];
}

/** Feeders whose way the site does not give, straight between the entries of what they join. */
function straightFeeders(
  site: Site,
  within: Box | undefined,
): readonly { readonly feeder: Feeder; readonly way: readonly [Point3, Point3] }[] {
  const equipment = byId(site.equipment);
  const routed = new Set(feederRoutesOf(site).routes.flatMap(({ feeder, way }) => (way ? [feeder] : [])));
  return site.feeders.flatMap((feeder) => {
    const [a, b] = [equipment.get(feeder.from)?.entry, equipment.get(feeder.to)?.entry];
    if (routed.has(feeder.id) || !a || !b) return [];
    if (within && !boxesMeet(boxOf([inPlan(a), inPlan(b)]), within)) return [];
    return [{ feeder, way: [a, b] as const }];
  });
}

/** The ways from raceways to boxes and equipment, each once. */
function taps({ runs }: Plan, within: Box | undefined): readonly (readonly [Point3, Point3])[] {
  const found = new Map<string, readonly [Point3, Point3]>();
  for (const { path, legs } of runs)
    legs.forEach((raceway, i) => {
      const [from, to] = [path[i], path[i + 1]];
      if (raceway !== null || !from || !to) return;
      if (within && !boxesMeet(boxOf([inPlan(from), inPlan(to)]), within)) return;
      found.set(JSON.stringify([from, to]), [from, to]);
    });
  return [...found.values()];
}

/** Cords at rest, and out to the inlet of the worst case of each stall. */
function cords({ drops, chargers, rules }: Shown, { reach }: Plan): readonly (readonly Point3[])[] {
  const byDrop = new Map(drops.map((drop) => [drop.id, drop]));
  const dropOf = new Map(chargers.map(({ id, drop }) => [id, byDrop.get(drop)]));
  const out = new Map<string, (readonly Point3[])[]>();
  for (const one of reach) {
    const drop = dropOf.get(one.charger);
    const path = drop ? cordOut(drop, rules, one) : [];
    if (drop && path.length > 1) addTo(out, drop.id, path);
  }
  return drops.flatMap((drop) => {
    const rest = cordAtRest(drop, rules);
    return [...(out.get(drop.id) ?? []), ...(rest ? [rest] : [])];
  });
}

/** Names beside what they are of; of stalls where no car covers them. */
function names({ stalls, equipment, drops }: Shown, hiding: Hiding): DrawnItem[] {
  const numbers = stalls.flatMap(({ id, label = id, at, heading }) => {
    const [ux, uy] = direction(heading);
    const place: Point2 = [at[0] + ux, at[1] + uy];
    return isCovered(place, hiding) ? [] : [textItem('stallNumbers', place, label)];
  });
  return [
    ...numbers,
    ...equipment.map(({ id, at, size }) =>
      textItem('equipment', raisedAt([at[0], at[1] + size[1] / 2 + 0.6, size[2]]), id, { height: LARGE }),
    ),
    ...drops.map(({ id, box, retractor }) => {
      const [x, y] = raisedAt(retractor ?? box);
      return textItem('dropNumbers', [x + 1.1, y + 0.3], id, { anchor: 'left', height: 0.6 });
    }),
  ];
}
