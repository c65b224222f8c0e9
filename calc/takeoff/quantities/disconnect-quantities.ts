import { byWords, takeoffKind } from '../../prices/kind.ts';
import type { DisconnectNeed } from '../../supply/panels/charger-disconnects.ts';
import { type Tally, tallying } from '../tally.ts';

const disconnectKind = byWords((rating, poles) =>
  takeoffKind({
    item: 'disconnect',
    spec: `${rating}, ${poles}, lockable`,
    unit: 'each',
    basis: 'one of each charger that has to have one and is fed by none that is drawn',
  }),
);

/** Disconnects of chargers that nobody drew, each at the rating of its branch; none for one that has it built in. */
export function disconnectQuantities(needs: readonly DisconnectNeed[]): Tally {
  const { add, tally } = tallying();
  for (const { charger, drawn, own, amps } of needs)
    if (own === null ? !drawn : own > 0)
      add(
        disconnectKind(
          amps === null ? `over the standard ratings, ${charger.volts} V` : `${amps} A ${charger.volts} V`,
          charger.phases === 3 ? '3-pole' : '2-pole',
        ),
        charger.id,
        1,
      );
  return tally;
}
