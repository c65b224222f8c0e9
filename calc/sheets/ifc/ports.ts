import type { Point3 } from '../../../routing/site/site.ts';
import { guidOf } from './guid.ts';
import { placedIn, type ShapeRoom } from './shapes.ts';
import { of, type StepValue, stepText, word } from './step.ts';

export type Flow = 'SOURCE' | 'SINK' | 'SOURCEANDSINK';

/** The ports of a model: each belongs to an element, and is joined to one of another. */
export interface Ports {
  /** A port of an element at a place, feet; its record. Null where the element is not in the model. */
  readonly add: (
    element: string,
    name: string,
    flow: Flow,
    kind: 'CABLE' | 'CABLECARRIER',
    at: Point3,
  ) => number | null;
  /** Joins two ports; nothing where one of them is not there. */
  readonly join: (from: number | null, to: number | null) => void;
  /** Writes which ports each element has. */
  readonly close: () => void;
}

/** Collects ports for elements by the key of their product. */
export function portsIn(room: ShapeRoom, records: ReadonlyMap<string, number>): Ports {
  const { writer } = room;
  const nested = new Map<string, StepValue[]>();
  return {
    add: (element, name, flow, kind, at) => {
      if (!records.has(element)) return null;
      const mine = nested.get(element) ?? [];
      const port = writer.add(
        'IFCDISTRIBUTIONPORT',
        stepText(guidOf(`port ${element} ${name}`)),
        null,
        stepText(name),
        null,
        null,
        of(placedIn(room, at)),
        null,
        word(flow),
        word(kind),
        word('ELECTRICAL'),
      );
      mine.push(of(port));
      nested.set(element, mine);
      return port;
    },
    join: (from, to) => {
      if (from === null || to === null) return;
      writer.add(
        'IFCRELCONNECTSPORTS',
        stepText(guidOf(`joins ${from} ${to}`)),
        null,
        null,
        null,
        of(from),
        of(to),
        null,
      );
    },
    close: () => {
      for (const [element, ports] of nested)
        writer.add(
          'IFCRELNESTS',
          stepText(guidOf(`ports of ${element}`)),
          null,
          null,
          null,
          of(records.get(element)!),
          ports,
        );
    },
  };
}
