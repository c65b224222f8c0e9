import { addTo } from '../../../routing/lists/grouping.ts';
import type { Point2, Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import type { DrawnItem, DrawnSymbol, DrawnText } from '../drawing/drawing.ts';
import { LAYERS, type LayerName } from '../drawing/layers.ts';
import type { LetteredPlan } from '../lettered/lettered-plan.ts';
import type { SheetMark, TextMark } from '../lettered/mark.ts';
import { placedMarks } from '../lettered/placed-marks.ts';
import { roundWords } from '../lettered/round-words.ts';
import { WHITE } from '../pdf/kit/ink.ts';
import { CAP } from '../pdf/kit/lettering/letters.ts';
import { pointsPerFoot } from '../pdf/kit/view/scales.ts';
import { symbolScale } from '../pdf/plans/base-plan.ts';
import { feedersInPlan } from '../pdf/plans/feeders-on-plan.ts';
import { circuitTags } from '../pdf/schedules/circuit-words.ts';
import {
  blockTags,
  circuitTag,
  conduitValues,
  dropValues,
  equipmentValues,
  feederValues,
  mostCircuits,
  openingValues,
  type Values,
} from './attributes.ts';
import { blockName } from './blocks.ts';
import type { Attribute, EntityWriter, Letters } from './entity-writer.ts';
import { letteredLayer, OWN_DIMENSIONS } from './layer-names.ts';
import { addMarks, lettersOf, type MarkRoom } from './mark-entities.ts';
import { ownDimensions } from './own-dimensions.ts';

/** What the model is written from. Marks and drawing are in feet. */
export interface ModelParts {
  readonly site: Site;
  readonly plan: Plan;
  readonly lettered: LetteredPlan;
  /** Feet in the units of the file. */
  readonly scaled: (feet: number) => number;
}

/** Writes the plan into the model: lines and symbols at full size, words, dimensions and clouds as they were placed. */
export function addModel(writer: EntityWriter, parts: ModelParts, room: MarkRoom): void {
  const { site, lettered } = parts;
  const hung = hungDrops(site);
  // Lines first, then the white that parts them, and on it all words, those that blocks carry among them.
  const items = lettered.drawing.items.filter(({ layer, kind }) => layer !== 'dimensions' || kind === 'symbol');
  for (const item of items) if (item.kind !== 'text') addItem(writer, item, parts, hung);
  for (const item of items) if (item.kind === 'text') addItem(writer, item, parts, hung);
  addMarks(writer, marksInUnits(parts, lettered.marks.filter(isWhite)), room);
  const tagged = addTagged(writer, parts, hung);
  const inUnits = marksInUnits(
    parts,
    lettered.marks.filter((mark) => !tagged.has(mark) && !isWhite(mark)),
  );
  addMarks(writer, inUnits, room);
  const own = marksInUnits(parts, ownDimensions(site, lettered));
  addMarks(writer, own, { ...room, layerOf: () => OWN_DIMENSIONS });
}

type Marks = LetteredPlan['marks'];

const isWhite = (mark: SheetMark): boolean => mark.kind === 'fill' && mark.colour === WHITE;

function marksInUnits({ scaled }: ModelParts, marks: Marks): Marks {
  return placedMarks(marks, { at: ([x, y]) => [scaled(x), scaled(y)], perPoint: scaled(1), turn: 0 });
}

function addItem(writer: EntityWriter, item: DrawnItem, parts: ModelParts, hung: ReadonlySet<string>): void {
  const { scaled } = parts;
  const layer = LAYERS[item.layer].name;
  switch (item.kind) {
    case 'line': {
      const { points, z, closed } = item;
      if (z)
        writer.polylineInSpace(
          points.map(([x, y], i) => [scaled(x), scaled(y), scaled(z[i]!)]),
          closed,
          { layer },
        );
      else
        writer.polyline(
          points.map(([x, y]) => [scaled(x), scaled(y)]),
          closed,
          { layer },
        );
      return;
    }
    case 'circle':
      writer.circle([scaled(item.at[0]), scaled(item.at[1])], scaled(item.radius), { layer });
      return;
    case 'text': {
      const letters = lettersOfItem(item, parts);
      if (item.stays) writer.wipeout(roundWords(letters, 0.15 * letters.height), { layer });
      writer.text(letters, { layer });
      return;
    }
    case 'symbol':
      // Those with attributes are written with them.
      if (!carriesTag(item, hung)) addSymbol(writer, item, parts, []);
  }
}

/** The box of a drop whose retractor hangs apart carries nothing: the retractor does. */
const carriesTag = ({ symbol, of }: DrawnSymbol, hung: ReadonlySet<string>): boolean =>
  symbol !== 'box' || !hung.has(of);

const hungDrops = ({ drops }: Site): ReadonlySet<string> =>
  new Set(drops.flatMap(({ id, retractor }) => (retractor === undefined ? [] : [id])));

function addSymbol(
  writer: EntityWriter,
  item: DrawnSymbol,
  { scaled, lettered }: ModelParts,
  attributes: readonly Attribute[],
): void {
  const perFoot = pointsPerFoot(lettered.scale);
  const layer = LAYERS[item.layer].name;
  const at = [scaled(item.at[0]), scaled(item.at[1]), scaled(item.z)];
  // As large as on the sheets.
  const size = symbolScale(perFoot) / perFoot;
  writer.insert(blockName(item.symbol), at, size, { layer }, attributes, {
    layer: letteredLayer(item.layer === 'drops' ? 'dropNumbers' : item.layer),
  });
}

/** Height of capitals, feet: never smaller than the least lettering of the sheets. */
function lettersOfItem({ text, at, height, turn, anchor }: DrawnText, { scaled, lettered }: ModelParts): Letters {
  const { lettering } = lettered.job;
  const feet = Math.max(height, (lettering.sizes.small * CAP) / pointsPerFoot(lettered.scale));
  const width = lettering.width(text, feet / CAP);
  const back = width * { left: 0, middle: 0.5, right: 1 }[anchor];
  const radians = (turn * Math.PI) / 180;
  const left: Point2 = [at[0] - back * Math.cos(radians), at[1] - back * Math.sin(radians)];
  return {
    words: text,
    at: [scaled(left[0]), scaled(left[1])],
    width: scaled(width),
    height: scaled(feet),
    turn,
    style: 'LETTERS',
  };
}

/** Writes all that carries attributes, with the words of the plan that are theirs; these words are returned. */
function addTagged(writer: EntityWriter, parts: ModelParts, hung: ReadonlySet<string>): ReadonlySet<unknown> {
  const { site, plan, lettered, scaled } = parts;
  const used = new Set<unknown>();
  const tags = blockTags(mostCircuits(site));
  const wordsOf = textsByElement(lettered.marks);
  const attributes = (
    block: string,
    values: Values,
    words: readonly TextMark[],
    seen: readonly string[],
  ): Attribute[] =>
    tags[block]!.flatMap((tag): Attribute[] => {
      const value = values[tag] ?? '';
      if (value === '') return [];
      const at = seen.indexOf(tag);
      const mark = at < 0 ? undefined : words[at];
      if (mark === undefined || mark.words !== value) return [{ tag, value, letters: null }];
      used.add(mark);
      return [{ tag, value, letters: lettersOf(marksInUnits(parts, [mark])[0] as TextMark) }];
    });
  const drops = dropValues(site, plan, circuitTags(site));
  const openings = openingValues(site, plan);
  const circuits = Array.from({ length: mostCircuits(site) }, (_, i) => circuitTag(i));
  const symbols = lettered.drawing.items.filter((item) => item.kind === 'symbol');
  for (const item of symbols) {
    if (!carriesTag(item, hung)) continue;
    const isDrop = item.layer === 'drops';
    const values = (isDrop ? drops : openings).get(item.of) ?? {};
    const words = wordsOf.get(`${isDrop ? 'dropNumbers' : 'pullPoints'} ${item.of}`) ?? [];
    const seen = isDrop ? ['TAG', ...circuits] : ['TAG'];
    addSymbol(writer, item, parts, attributes(isDrop ? 'DROP' : 'OPENING', values, words, seen));
  }
  const tag = (block: string, at: Point2, layer: LayerName, values: Values, words: readonly TextMark[] = []): void => {
    const look = { layer: letteredLayer(layer) };
    writer.insert(block, [scaled(at[0]), scaled(at[1]), 0], 1, look, attributes(block, values, words, ['TAG', 'KIND']));
  };
  for (const one of site.equipment)
    tag('EQUIPMENT_TAG', one.at, 'equipment', equipmentValues(one), wordsOf.get(`equipment ${one.id}`));
  for (const conduit of plan.conduits)
    tag(
      'CONDUIT_TAG',
      middleOf(conduit.path.map((at) => [at[0], at[1]])),
      'conduitSizes',
      conduitValues(conduit, site),
    );
  const feeders = feederValues(site, plan);
  for (const { feeder, points } of feedersInPlan(site))
    tag('FEEDER_TAG', middleOf(points), 'conduitSizes', feeders.get(feeder.id)!);
  return used;
}

function textsByElement(marks: Marks): ReadonlyMap<string, readonly TextMark[]> {
  const found = new Map<string, TextMark[]>();
  for (const mark of marks) {
    if (mark.kind !== 'text' || mark.of === undefined) continue;
    const key = `${mark.layer} ${mark.of}`;
    addTo(found, key, mark);
  }
  return found;
}

/** The point half of the way along. */
function middleOf(points: readonly Point2[]): Point2 {
  const legs = points.slice(1).map((to, i) => Math.hypot(to[0] - points[i]![0], to[1] - points[i]![1]));
  let rest = legs.reduce((sum, leg) => sum + leg, 0) / 2;
  for (const [i, leg] of legs.entries()) {
    if (rest <= leg && leg > 0) {
      const [from, to] = [points[i]!, points[i + 1]!];
      return [from[0] + (rest / leg) * (to[0] - from[0]), from[1] + (rest / leg) * (to[1] - from[1])];
    }
    rest -= leg;
  }
  return points[0] ?? [0, 0];
}
