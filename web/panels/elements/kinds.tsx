import type { ReactNode } from 'react';
import type { DrawToolName } from '../../board/kinds/kinds.ts';
import type { ListName } from '../../document/change/element-lists.ts';
import { CanopyForm } from '../draw/canopy-form.tsx';
import { DropsForm } from '../draw/drops-form.tsx';
import { EquipmentForm } from '../draw/equipment-form.tsx';
import { AisleForm, ColumnForm, ElevationForm, KeepoutForm } from '../draw/plain-forms.tsx';
import { RacewayForm } from '../draw/raceway-form.tsx';
import { StallsForm } from '../draw/stalls-form.tsx';
import { SHARED_WORDS, type SharedWords } from '../selection/shared-words.ts';
import { AislePanel, KeepoutPanel } from './area-panel.tsx';
import { ChargerPanel } from './drops/charger-panel.tsx';
import { DropPanel } from './drops/drop-panel.tsx';
import { EquipmentPanel } from './equipment/equipment-panel.tsx';
import { FeederPanel } from './equipment/feeder-panel.tsx';
import { LoadPanel } from './equipment/load-panel.tsx';
import { ColumnPanel, MemberPanel, PullpointPanel } from './plain-panels.tsx';
import { RacewayPanel } from './raceway-panel.tsx';
import { BoundaryForm, BoundaryPanel } from './remarks/boundary-panel.tsx';
import { CloudForm, CloudPanel } from './remarks/cloud-panel.tsx';
import { DimensionForm, DimensionPanel } from './remarks/dimension-panel.tsx';
import { NoteForm, NotePanel } from './remarks/note-panel.tsx';
import { SectionForm, SectionPanel } from './remarks/section-panel.tsx';
import { StallPanel } from './stall-panel.tsx';

/** How a kind of element is changed in the ledger. */
interface PanelKind<L extends ListName> {
  /** The form of one. */
  readonly form: (props: { readonly id: string }) => ReactNode;
  /** The fields that several may be given at once, in the order and the words of the form. */
  readonly shared: readonly SharedWords<L>[];
}

export const PANEL_KINDS: { readonly [L in ListName]: PanelKind<L> } = {
  stalls: { form: StallPanel, shared: SHARED_WORDS.stalls },
  columns: { form: ColumnPanel, shared: SHARED_WORDS.columns },
  members: { form: MemberPanel, shared: SHARED_WORDS.members },
  keepouts: { form: KeepoutPanel, shared: SHARED_WORDS.keepouts },
  aisles: { form: AislePanel, shared: SHARED_WORDS.aisles },
  equipment: { form: EquipmentPanel, shared: SHARED_WORDS.equipment },
  feeders: { form: FeederPanel, shared: SHARED_WORDS.feeders },
  loads: { form: LoadPanel, shared: SHARED_WORDS.loads },
  raceways: { form: RacewayPanel, shared: SHARED_WORDS.raceways },
  pullpoints: { form: PullpointPanel, shared: SHARED_WORDS.pullpoints },
  drops: { form: DropPanel, shared: SHARED_WORDS.drops },
  chargers: { form: ChargerPanel, shared: SHARED_WORDS.chargers },
  notes: { form: NotePanel, shared: [] },
  dimensions: {
    form: DimensionPanel,
    shared: [{ label: 'line to the left by', called: 'offset of the line', paths: [['offset']] }],
  },
  clouds: { form: CloudPanel, shared: [] },
  sections: {
    form: SectionPanel,
    shared: [{ label: 'look to the left by', called: 'depth of the view', paths: [['look']] }],
  },
  boundaries: { form: BoundaryPanel, shared: SHARED_WORDS.boundaries },
};

/** What the actions that draw are to be like. */
export const DRAW_FORMS: Readonly<Record<DrawToolName, () => ReactNode>> = {
  stalls: StallsForm,
  canopy: CanopyForm,
  equipment: EquipmentForm,
  raceway: RacewayForm,
  drops: DropsForm,
  keepout: KeepoutForm,
  aisle: AisleForm,
  pullpoint: () => <ElevationForm tool="pullpoint" />,
  member: () => <ElevationForm tool="member" />,
  column: ColumnForm,
  note: NoteForm,
  dimension: DimensionForm,
  cloud: CloudForm,
  section: SectionForm,
  boundary: BoundaryForm,
};
