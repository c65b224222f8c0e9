import type { GroundFeature } from './geojson.ts';

/** What of an open map belongs to a parking lot. */
export interface OpenMap {
  readonly lots: readonly GroundFeature[];
  readonly aisles: readonly GroundFeature[];
  readonly buildings: readonly GroundFeature[];
  /** The name of the largest lot that has one; null where none has. */
  readonly name: string | null;
}

/** What a feature is tagged with, by itself or under `tags`, as open maps publish it. */
function tagOf({ properties }: GroundFeature, name: string): string | null {
  const tags = properties.get('tags');
  const value =
    properties.get(name) ??
    (typeof tags === 'object' && tags !== null ? (tags as Record<string, unknown>)[name] : undefined);
  return typeof value === 'string' && value !== '' ? value : null;
}

/** Lots that stand under the sky: those in and under buildings have no row along a kerb. */
const COVERED = new Set(['multi-storey', 'underground', 'rooftop', 'street_side', 'lane', 'half_on_kerb', 'on_kerb']);

const isArea = ({ shapes }: GroundFeature): boolean => shapes.some(({ kind }) => kind === 'ring');

/** Parking lots, their aisles and the buildings about them, by the tags of open maps. */
export function openMapOf(features: readonly GroundFeature[]): OpenMap {
  const lots = features.filter(
    (feature) =>
      tagOf(feature, 'amenity') === 'parking' && isArea(feature) && !COVERED.has(tagOf(feature, 'parking') ?? ''),
  );
  const named = lots
    .flatMap((lot) => {
      const name = tagOf(lot, 'name');
      return name === null ? [] : [{ name, size: lot.shapes.reduce((sum, { points }) => sum + points.length, 0) }];
    })
    .sort((a, b) => b.size - a.size);
  return {
    lots,
    aisles: features.filter(
      (feature) => tagOf(feature, 'highway') === 'service' && feature.shapes.some(({ kind }) => kind === 'line'),
    ),
    buildings: features.filter((feature) => isArea(feature) && (tagOf(feature, 'building') ?? 'no') !== 'no'),
    name: named[0]?.name.slice(0, 200) ?? null,
  };
}

/** What the layer of a feature is called by its tags; null where they tell none. */
export function openMapLayer(feature: GroundFeature): string | null {
  if (tagOf(feature, 'amenity') === 'parking') return 'parking lots';
  if (tagOf(feature, 'amenity') === 'parking_space') return 'parking spaces';
  if (tagOf(feature, 'building') !== null) return 'buildings';
  if (tagOf(feature, 'highway') === 'service') return 'aisles';
  if (tagOf(feature, 'highway') !== null) return 'roads and paths';
  return tagOf(feature, 'barrier') === 'kerb' ? 'kerbs' : null;
}
