import type { Rectangle } from '../plane/rectangle.ts';
import { inStall } from '../site/place/stall-rectangle.ts';
import { DIRECTIONS, type Direction } from '../site/schema/vocabulary.ts';
import type { Inlet, Point3, Site, Stall, Vehicle } from '../site/site.ts';

/** The vehicle that stands in a stall: the class it names, else the rules' class. An unknown class is a RangeError. */
export function vehicleOf(
  stall: Stall,
  site: Pick<Site, 'vehicles'> & { readonly rules: Pick<Site['rules'], 'vehicle'> },
): Vehicle {
  const name = stall.vehicle ?? site.rules.vehicle;
  const vehicle = site.vehicles.get(name);
  if (!vehicle) throw new RangeError(`stall ${stall.id}: no vehicle class "${name}"`);
  return vehicle;
}

const EACH_WAY: Readonly<Record<Direction, readonly Direction[]>> = { 'nose-in': ['nose-in'], 'back-in': ['back-in'] };

/** The ways a car may stand in a stall, nose-in first. */
export function directionsOf(stall: Stall): readonly Direction[] {
  const parking = stall.parking ?? 'either';
  return parking === 'either' ? DIRECTIONS : EACH_WAY[parking];
}

/**
 * Where a vehicle stands in a stall: centred across it, its leading bumper `headClearance` feet from the head, the rest
 * toward the aisle and past the entry where the vehicle is long. Whichever bumper leads, the rectangle is the same, so
 * a parked vehicle is one obstacle for both directions. Counter-clockwise, from its right corner nearest the entry.
 */
export function parkedRectangle(stall: Stall, vehicle: Vehicle, headClearance: number): Rectangle {
  const lead = stall.depth - headClearance;
  const tail = lead - vehicle.length;
  const half = vehicle.width / 2;
  return [
    inStall(stall, tail, -half),
    inStall(stall, lead, -half),
    inStall(stall, lead, half),
    inStall(stall, tail, half),
  ];
}

/**
 * Where an inlet is when the vehicle stands in a stall, feet. Left and right are the vehicle's own, facing forward. An
 * inlet at the side `front` or `rear` is at the middle of that bumper, whatever its `along` says.
 */
export function inletAt(
  stall: Stall,
  vehicle: Vehicle,
  headClearance: number,
  parking: Direction,
  inlet: Pick<Inlet, 'along' | 'side' | 'height'>,
): Point3 {
  const lead = stall.depth - headClearance;
  const fraction = inlet.side === 'front' ? 0 : inlet.side === 'rear' ? 1 : inlet.along;
  const fromLead = (parking === 'nose-in' ? fraction : 1 - fraction) * vehicle.length;
  const ownLeft = inlet.side === 'left' ? vehicle.width / 2 : inlet.side === 'right' ? -vehicle.width / 2 : 0;
  const [x, y] = inStall(stall, lead - fromLead, parking === 'nose-in' ? ownLeft : -ownLeft);
  return [x, y, inlet.height];
}
