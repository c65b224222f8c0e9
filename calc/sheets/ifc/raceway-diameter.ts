import type { Conduit } from '../../plan-file/branches.ts';

/** Outside of a tray drawn as a rod, feet. */
const TRAY = 0.5;

/** Trade size of a conduit in feet, near enough its inside diameter for a model; a tray is drawn six inches thick. */
export function racewayDiameterFeet({ tradeSize }: Conduit): number {
  if (tradeSize === null) return TRAY;
  const inches = tradeSize.split('-').reduce((sum, part) => {
    const [over = 0, under = 1] = part.split('/').map(Number);
    return sum + over / under;
  }, 0);
  return inches / 12;
}
