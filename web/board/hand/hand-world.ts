import type { DocumentStore } from '../../document/store.ts';
import type { PageStore } from '../../page-state/page-store.ts';
import type { DrawHand } from '../draw/draw-hand.ts';
import type { Scene } from '../scene/scene.ts';
import type { ViewStore } from '../view-store.ts';
import type { MeasureHand } from './measure-hand.ts';

/** What the hand works on. */
export interface HandWorld {
  readonly element: HTMLElement;
  readonly document: DocumentStore;
  readonly view: ViewStore;
  readonly page: PageStore;
  readonly scene: () => Scene;
  readonly draw: DrawHand;
}

/** What a gesture may be handed of it. */
export interface GestureWorld extends Omit<HandWorld, 'element'> {
  readonly measure: MeasureHand;
}
