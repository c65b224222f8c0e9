import { openMapOf } from '../../../routing/site/import/open-map.ts';
import { siteOf } from '../../../routing/site/place/georef.ts';
import type { Georef, Point2, Underlay } from '../../../routing/site/site.ts';
import { fitted } from '../../board/camera.ts';
import { emptySite } from '../../document/opening.ts';
import type { UnderlayPicture } from '../painting/picture.ts';
import { boxOnSite, carriedOver, type Placement } from '../placing/placement.ts';
import { readUnderlay } from '../reading/read-underlay.ts';
import { placeUnderlay } from '../underlay-edits.ts';
import { faultWords } from '../underlay-store.ts';
import { underlaysOf } from '../underlays.ts';
import { fileKind, looksLikeSite } from './file-kind.ts';
import { hashOf, keepBytes } from './kept-bytes.ts';
import { otherKind } from './other-kinds.ts';
import type { PickedFor } from './pick-context.ts';
import type { UnderlayWorld } from './pick-underlay.ts';

/** The largest file that is read, bytes. */
const MAX_BYTES = 120_000_000;

/**
 * Lays a file under the drawing, over what lies there. The very file that the site names, picked again in its place, or
 * dropped again (null), lies as it did. False where it cannot be read; a notice says why.
 */
export async function takeUnderlay(world: UnderlayWorld, file: File, how: PickedFor | null = null): Promise<boolean> {
  const { document, underlays } = world;
  const { notify } = document.getState();
  const stop = new AbortController();
  const tell = (share: number): void =>
    underlays.setState({ reading: { file: file.name, share, stop: () => stop.abort() } });
  try {
    if (file.size > MAX_BYTES) {
      notify(`${file.name} is over ${MAX_BYTES / 1e6} MB.`);
      return false;
    }
    const bytes = new Uint8Array(await file.arrayBuffer());
    const kind = fileKind(bytes);
    if (kind === 'geojson' && looksLikeSite(bytes)) {
      notify(`${file.name} is a site file: open it instead.`);
      return false;
    }
    if (!kind) {
      notify(`${file.name} ${otherKind(bytes)}.`);
      return false;
    }
    const hash = await hashOf(bytes);
    const own = underlaysOf(document.getState().site);
    const before =
      how === 'one more' ? undefined : own.find((each, i) => each.hash === hash && (how === null || how === i));
    const page = before?.page ?? 1;
    tell(0);
    const picture = await readUnderlay(kind, bytes, page, { tell, signal: stop.signal });
    if (stop.signal.aborted) {
      picture.close();
      return false;
    }
    let kept = true;
    await keepBytes(hash, bytes, Date.now()).catch(() => {
      kept = false;
    });
    underlays.take(hash, page, picture);
    // The very file that the site names was picked again: it lies as it did.
    if (!before) {
      const { file: site, apply } = document.getState();
      const georef = document.getState().site.georef ?? groundOfFile(picture);
      const isNew = document.getState().site.georef === undefined;
      const underlay: Underlay = {
        file: file.name.slice(0, 200) || 'a file',
        kind,
        hash,
        ...firstPlacement(world, picture, georef),
      };
      if (
        !apply(
          placeUnderlay(
            site,
            underlay,
            isNew ? georef : null,
            typeof how === 'number' ? how : null,
            nameFrom(site.name, picture),
          ),
        )
      )
        return false;
      showWhole(world, picture, underlay);
      if (isNew && georef)
        notify(
          `The site had no place on the ground: its origin now lies at ${georef.lat.toFixed(6)}, ${georef.lon.toFixed(6)}, ${picture.georef ? 'as the file says' : `the middle of ${file.name}`}.`,
        );
    }
    if (!kept) notify(`${file.name} is shown, but this browser has no room to keep it.`);
    return true;
  } catch (error) {
    if (!stop.signal.aborted) notify(faultWords(file.name, error));
    return false;
  } finally {
    underlays.setState({ reading: null });
  }
}

/** A site that has no name of its own takes that of the lot of an open map; null where it keeps its own. */
function nameFrom(own: string, { features }: UnderlayPicture): string | null {
  return own === emptySite().name && features ? openMapOf(features).name : null;
}

/** Where the origin comes to lie on a site that says not: where the file says, else in the file's middle. */
function groundOfFile({ ground, georef }: UnderlayPicture): Georef | null {
  if (georef) return georef;
  return ground ? { lon: ground[0], lat: ground[1], bearing: 0 } : null;
}

/** Farther from the site's origin than this, feet, a drawing is brought to it. */
const FAR = 5_000;

/** Where a file lies at first: by its own units and place where it has them, else as large as the view. */
function firstPlacement({ document, view }: UnderlayWorld, picture: UnderlayPicture, georef: Georef | null): Placement {
  const { box, feetPerUnit, ground, lines, place } = picture;
  const { site } = document.getState();
  if (place) return carriedOver(place, picture.georef, georef ?? undefined);
  if (ground) {
    return georef ? { at: siteOf(georef, ground), scale: 1, rotation: georef.bearing } : { at: [0, 0], scale: 1 };
  }
  if (lines) {
    const scale = feetPerUnit ?? (site.units === 'm' ? 1 / 0.3048 : 1);
    const corner: Point2 = [box.minX, box.minY];
    const near = [box.minX, box.minY, box.maxX, box.maxY].every((side) => Math.abs(side * scale) < FAR);
    return near ? { at: [0, 0], scale } : { at: [0, 0], origin: corner, scale };
  }
  const { camera, viewport } = view.getState();
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
  const { perInch, statedFeet } = picture;
  const fitting =
    (0.8 * Math.min(Math.max(100, viewport.width) / width, Math.max(100, viewport.height) / height)) / camera.scale;
  // A sheet that states its scale is laid by it.
  const scale = perInch !== undefined && statedFeet !== undefined ? statedFeet / perInch : fitting;
  return { at: [camera.x - (width * scale) / 2, camera.y - (height * scale) / 2], scale };
}

function showWhole({ view, scene }: UnderlayWorld, picture: UnderlayPicture, placement: Placement): void {
  const { viewport } = view.getState();
  const { extent } = scene();
  const empty = extent.minX > extent.maxX;
  if (empty && viewport.width > 0)
    view.setState({ camera: fitted(boxOnSite(placement, picture.box), viewport, 40, 1e6) });
}
