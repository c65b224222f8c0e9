import { inOrderOfArrival } from '../cars/parking.ts';
import type { World } from './world.ts';

/** Lacking no more than this, kilowatt-hours, a car is full. */
const FULL = 1e-7;

/** Which cars have a cord, step by step: asked once for each step, in order. */
export type CordsDealt = (step: number, got: Float64Array) => readonly number[];

/** The cars that have a cord in a step and are not full. */
export const cordsInStep = (world: World): CordsDealt =>
  world.input.hold === 'stay' ? keptForTheStay(world) : handedOn(world);

const isFull = ({ need }: World, got: Float64Array, car: number): boolean => need[car]! - got[car]! <= FULL;

function queues(world: World): number[][] {
  const queue: number[][] = world.input.chargers.map(() => []);
  for (const car of inOrderOfArrival(world.stays)) if (world.charger[car]! >= 0) queue[world.charger[car]!]!.push(car);
  return queue;
}

/** Each car has its cord from its first step, or from when the one before it has gone, until it goes. */
function keptForTheStay(world: World): CordsDealt {
  const begins: number[][] = Array.from({ length: world.window.steps }, () => []);
  for (const queue of queues(world)) {
    let free = 0;
    for (const car of queue) {
      const { first, end } = world.stays[car]!;
      if (Math.max(first, free) < end) begins[Math.max(first, free)]!.push(car);
      free = Math.max(free, end);
    }
  }
  let holders: number[] = [];
  return (k, got) => {
    holders = holders.filter((car) => world.stays[car]!.end > k && !isFull(world, got, car));
    holders.push(...begins[k]!.filter((car) => !isFull(world, got, car)));
    return holders;
  };
}

/** A car that is full, or goes, hands the cord to the next in the order of parking that stands there and is not full. */
function handedOn(world: World): CordsDealt {
  const queue = queues(world);
  const holder = new Int32Array(queue.length).fill(-1);
  const waiting = queue.map(() => 0);
  return (k, got) => {
    const holders: number[] = [];
    for (let c = 0; c < queue.length; c++) {
      const cars = queue[c]!;
      const wants = (car: number): boolean => world.stays[car]!.end > k && !isFull(world, got, car);
      if (holder[c]! >= 0 && !wants(holder[c]!)) holder[c] = -1;
      // A car that came earlier is earlier in the queue, so the first that still wants it is the next.
      while (waiting[c]! < cars.length && holder[c]! < 0) {
        const car = cars[waiting[c]!]!;
        if (world.stays[car]!.first > k) break;
        if (wants(car)) holder[c] = car;
        waiting[c]!++;
      }
      if (holder[c]! >= 0) holders.push(holder[c]!);
    }
    return holders;
  };
}
