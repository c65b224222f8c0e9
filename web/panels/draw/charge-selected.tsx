import { groundToDrawOn } from '../../board/draw/desk.ts';
import { useDesk } from '../../board/draw/use-desk.ts';
import { insertedBy } from '../../document/change/selection.ts';
import { chargeStalls } from '../../document/edits/charging/charge-stalls.ts';
import { useDocument } from '../../document/use-document.tsx';
import { useOptions } from './use-options.ts';

/** One action: every selected stall that no charger serves gets its drop and its charger. */
export function ChargeSelected() {
  const desk = useDesk();
  const [options] = useOptions('drops');
  const selection = useDocument((state) => state.selection);
  const chargers = useDocument((state) => state.site.chargers);
  const hasSource = useDocument((state) => state.site.equipment.length > 0);
  const served = new Set(chargers.flatMap(({ stalls }) => stalls));
  const stalls = selection.filter(({ list, id }) => list === 'stalls' && !served.has(id)).map(({ id }) => id);
  if (stalls.length === 0) return null;
  const act = async (): Promise<void> => {
    const { file, site } = groundToDrawOn(desk);
    const charged = chargeStalls(file, site, stalls, options);
    const { applyLarge, select, notify } = desk.document.getState();
    if (!charged || !(await applyLarge(charged.edit))) return;
    select(insertedBy(charged.edit).filter(({ list }) => list === 'drops'));
    const { without, short } = charged;
    if (without.length + short.length > 0)
      notify(
        [
          without.length > 0 && `No place was found for a drop at ${without.join(', ')}.`,
          short.length > 0 && `No place covers ${short.join(', ')} wholly; the best was taken.`,
        ]
          .filter(Boolean)
          .join(' '),
      );
  };
  return (
    <p className="panel-act">
      <button type="button" className="act" disabled={!hasSource} onClick={() => void act()}>
        {stalls.length === 1
          ? `Give stall ${stalls[0]} its drop and charger`
          : `Give each of ${stalls.length} stalls its drop and charger`}
      </button>
      {!hasSource && <span className="quiet">Place the equipment that feeds them first.</span>}
    </p>
  );
}
