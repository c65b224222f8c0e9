import { aisleClearHeight } from '../../../routing/checks/drops/clear-height.ts';
import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import { AISLE_KINDS, AISLE_WORDS, KEEPOUT_BLOCKS } from '../../../routing/site/schema/vocabulary.ts';
import { useDocument } from '../../document/use-document.tsx';
import { FieldGroup } from '../../parts/field-group.tsx';
import { ChoiceField } from '../../parts/fields.tsx';
import { MaybeLength } from '../../parts/maybe-fields.tsx';
import { Fact, Facts, OwnFindings } from '../facts/facts.tsx';
import { ChecksField } from './checks-field.tsx';
import { Corners } from './corners.tsx';
import { useChange, useElement } from './use-element.ts';

interface PanelProps {
  readonly id: string;
}

/** A keep-out: what it keeps out, between which elevations, and its corners. */
export function KeepoutPanel({ id }: PanelProps) {
  const keepout = useElement('keepouts', id);
  const change = useChange('keepouts', id);
  if (!keepout) return null;
  return (
    <>
      <FieldGroup name="Keep-out">
        <ChecksField
          label="keeps out"
          choices={KEEPOUT_BLOCKS}
          value={keepout.blocks}
          onChange={(blocks) => change({ blocks })}
        />
        <MaybeLength
          label="from"
          none="grade and below"
          value={keepout.from ?? null}
          onChange={(from) => change({ from: from ?? undefined })}
        />
        <MaybeLength
          label="to"
          none="any height"
          value={keepout.to ?? null}
          onChange={(to) => change({ to: to ?? undefined })}
        />
        <Corners outline={keepout.outline} onChange={(outline) => change({ outline })} />
      </FieldGroup>
      <OwnFindings id={id} />
    </>
  );
}

export function AislePanel({ id }: PanelProps) {
  const aisle = useElement('aisles', id);
  const change = useChange('aisles', id);
  const { rules, units } = useDocument((state) => state.site);
  if (!aisle) return null;
  return (
    <>
      <Facts>
        <Fact name="clear height">{printLength(aisleClearHeight(aisle, rules), units)}</Fact>
      </Facts>
      <FieldGroup name="Aisle">
        <ChoiceField
          label="kind"
          value={aisle.kind ?? 'drive'}
          choices={AISLE_KINDS}
          words={(each) => AISLE_WORDS[each]}
          onChange={(kind) => change({ kind: kind === 'drive' ? undefined : kind })}
        />
        <Corners outline={aisle.outline} onChange={(outline) => change({ outline })} />
      </FieldGroup>
      <OwnFindings id={id} />
    </>
  );
}
