import { isDrawTool } from '../../draw/tool-names.ts';
import { type Gesture, nothing } from '../gesture.ts';
import { clearAway, type Hand, handPoint, siteAt, underHand } from '../hand.ts';
import type { GestureWorld } from '../hand-world.ts';

/** The hand is in the middle of nothing: what it draws or measures follows it, and it shows what it would take. */
export function hovering({ view, scene, draw, measure }: Omit<GestureWorld, 'document'>): Gesture {
  const hover = (hand: Hand): void => {
    const { tool, measureFrom, hovered } = view.getState();
    const pointer = siteAt(view, hand.at);
    const how = handPoint(view, hand);
    if (isDrawTool(tool)) draw.hover(pointer, how);
    else if (measureFrom) measure.hover(pointer, how);
    else {
      const ref = tool === 'select' ? underHand(view, scene(), hand) : null;
      const same = ref?.id === hovered?.id && ref?.list === hovered?.list;
      view.setState(same ? { pointer } : { pointer, hovered: ref });
    }
  };
  const self: Gesture = {
    doing: 'nothing',
    move: (hand) => {
      hover(hand);
      return self;
    },
    end: () => {
      clearAway(view);
      return null;
    },
    cancel: nothing,
    giveWay: nothing,
  };
  return self;
}
