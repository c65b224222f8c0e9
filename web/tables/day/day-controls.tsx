import { STRATEGY_WORDS } from '../../../calc/day/figures/day-words.ts';
import { STRATEGIES, type Strategy } from '../../../calc/day/rules/rules.ts';
import type { DayLimitFields } from '../../../routing/site/schema/day-schema.ts';
import { ChoiceField } from '../../parts/fields.tsx';

interface ControlsProps {
  readonly strategy: Strategy;
  readonly onStrategy: (strategy: Strategy) => void;
  readonly limits: readonly DayLimitFields[];
  readonly limit: DayLimitFields | undefined;
  readonly onLimit: (id: string) => void;
  /** Most that the limit would bear without management. */
  readonly unmanaged: number;
  /** The figure that is tried in place of the limit's own. */
  readonly ceiling: number | null;
  readonly onCeiling: (ceiling: number | null) => void;
  /** The panel whose managed amperes the limit is. */
  readonly managed: string | undefined;
  readonly onHold: (amps: number) => void;
}

/** The rule, the limit that is looked at, and the figure that is tried for it. */
export function DayControls(props: ControlsProps) {
  const { strategy, limits, limit, ceiling, onCeiling, managed } = props;
  const unit = limit?.kind === 'kw' ? 'kW' : 'A';
  const standing = limit === undefined ? 0 : ((limit.kind === 'kw' ? limit.kw : limit.amps) ?? 0);
  const isTried = ceiling !== null && ceiling !== standing;
  return (
    <div className="day-controls">
      <ChoiceField
        label="rule"
        value={strategy}
        choices={STRATEGIES}
        words={(one) => STRATEGY_WORDS[one]}
        onChange={props.onStrategy}
      />
      {limits.length > 1 && (
        <ChoiceField label="limit" value={limit!.id} choices={limits.map(({ id }) => id)} onChange={props.onLimit} />
      )}
      {limit !== undefined && (
        <label className="day-ceiling">
          what if it were {Math.round(ceiling ?? standing)} {unit}
          <input
            type="range"
            min={0}
            max={Math.max(10, Math.ceil(Math.max(standing, props.unmanaged) * 1.2))}
            step={1}
            value={ceiling ?? standing}
            onChange={(event) => onCeiling(event.target.valueAsNumber)}
          />
        </label>
      )}
      {isTried && (
        <button type="button" onClick={() => onCeiling(null)}>
          Back to {Math.round(standing)} {unit}
        </button>
      )}
      {managed !== undefined && isTried && ceiling > 0 && (
        <button type="button" onClick={() => props.onHold(ceiling)}>
          Hold {managed} to {ceiling} A
        </button>
      )}
    </div>
  );
}
