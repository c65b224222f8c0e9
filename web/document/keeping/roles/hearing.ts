import type { DocumentEvent } from '../../document-state.ts';
import { ownFileOf } from '../../files/own-file.ts';
import { HAND_OVER_MS, type TabMessage } from '../tabs.ts';
import { catchUp, stepBack } from './following.ts';
import type { Keeper } from './keeper.ts';

/** What each role makes of a change of the open document. */
export function hear(keeper: Keeper, event: DocumentEvent): void {
  const { role, store } = keeper;
  if (event.what === 'open') {
    keeper.ownFile = ownFileOf(event);
    if (role.kind === 'starting') keeper.early = keeper.ownFile;
    else keeper.see(keeper.begin(event.history, keeper.ownFile));
    return;
  }
  if (event.what === 'saved') keeper.ownFile = ownFileOf(event);
  if (role.kind === 'writing') {
    if (store.getState().keeping.kind === 'kept') store.setKeeping({ kind: 'writing' });
    role.writer.note(event);
  } else if (role.kind === 'starting') keeper.early = {};
}

/** What each role makes of what another tab tells. */
export function hearTab(keeper: Keeper, message: TabMessage): void {
  const { role, world, changed, see } = keeper;
  const { doc } = message;
  if (message.kind === 'listed') changed(doc);
  else if (message.kind === 'wrote') {
    changed(doc);
    keeper.highest = Math.max(keeper.highest, message.order ?? 0);
    if (role.kind === 'watching' && role.doc === doc && message.seq > role.seq) see(catchUp(keeper));
  } else if (message.kind === 'hand-over' && role.kind === 'writing' && role.doc === doc) {
    see(stepBack(keeper, doc, 2 * HAND_OVER_MS).then(() => world.tabs.tell({ kind: 'handed-over', doc })));
  }
}
