import type { Thumbnail } from '../document/keeping/store/storage-records.ts';

/** A site's plan in a few lines; an empty sheet until it is worked out. */
export function PlanPicture({ picture }: { readonly picture: Thumbnail | undefined }) {
  if (!picture) return <div className="kept-plan" aria-hidden="true" />;
  const { width, height, stalls, steel, raceways, drops } = picture;
  return (
    <svg className="kept-plan" viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      <path className="kept-stalls" d={stalls} />
      <path className="kept-steel" d={steel} />
      <path className="kept-raceways" d={raceways} />
      <path className="kept-drops" d={drops} />
    </svg>
  );
}
