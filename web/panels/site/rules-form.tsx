import { EDITIONS, tablesOf } from '../../../calc/tables/editions.ts';
import { ruleNotesOf } from '../../../calc/tables/rule-notes-of.ts';
import { RULE_NOTES, type RuleNote } from '../../../routing/site/rules/rule-notes.ts';
import { ruleAt, ruleWords } from '../../../routing/site/rules/rule-value.ts';
import {
  ACCESSIBLE_BY,
  BENT_TRADE_SIZES,
  INSULATIONS,
  LEAST_TRADE_SIZES,
  LOCATIONS,
  METALS,
} from '../../../routing/site/schema/vocabulary.ts';
import { changeRules, type RulesPatch } from '../../document/edits/set.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { ChoiceField, LengthField, NumberField, TextField } from '../../parts/fields.tsx';

/** Every rule of the site, its value, what it decides and where its default comes from. */
export function RulesForm() {
  const tables = useDocument((state) => tablesOf(state.site.rules));
  return (
    <details className="site-form">
      <summary>Rules</summary>
      {ruleNotesOf(tables).map((note) => (
        <RuleField key={note.path} note={note} />
      ))}
    </details>
  );
}

const CHOICES: Readonly<Record<string, readonly string[]>> = {
  code: EDITIONS,
  metal: METALS,
  insulation: INSULATIONS,
  terminalC: ['60', '75', '90'],
  undergroundTradeSize: LEAST_TRADE_SIZES,
  bentTradeSize: BENT_TRADE_SIZES,
  boxLocation: LOCATIONS,
  accessibleBy: ACCESSIBLE_BY,
};

function RuleField({ note }: { readonly note: RuleNote }) {
  const document = useDocumentStore();
  const rules = useDocument((state) => state.site.rules);
  const vehicles = useDocument((state) => state.site.vehicles);
  const units = useDocument((state) => state.site.units);
  const { path, unit, meaning, source, name } = note;
  const value = ruleAt(rules, path);
  // A temperature is entered in C and read in both.
  const both = unit === '°C' ? `${ruleWords(note, value, units)}; ` : '';
  const set = (next: string | number | undefined): void => {
    const { file, apply } = document.getState();
    apply(changeRules(file, patchAt(path, next)));
  };
  const held = path === 'vehicle' ? [...vehicles.keys()] : CHOICES[path];
  // What a file asks for and is not held is shown until another is chosen.
  const choices = held && !held.includes(String(value)) ? [...held, String(value)] : held;
  return (
    <div className="rule">
      {choices ? (
        <ChoiceField
          label={name}
          value={String(value)}
          choices={choices}
          onChange={(next) => set(typeof value === 'number' ? Number(next) : next)}
        />
      ) : typeof value === 'string' ? (
        <TextField label={name} value={value} onChange={set} />
      ) : unit === 'ft' ? (
        <LengthField label={name} value={value} onChange={set} />
      ) : (
        <NumberField label={name} unit={unit} least={Number.NEGATIVE_INFINITY} value={value} onChange={set} />
      )}
      <p className="source">
        {both}
        {meaning}; {source}.
        {value !== note.default && (
          <button type="button" className="plain" onClick={() => set(undefined)}>
            Back to {ruleWords(note, note.default, units)}
          </button>
        )}
      </p>
    </div>
  );
}

/** A rule of a group goes back to its default by being given it: the rest of the group stays. */
function patchAt(path: string, value: string | number | undefined): RulesPatch {
  const [group, name] = path.split('.');
  if (name === undefined) return { [group!]: value };
  const own = value ?? RULE_NOTES.find((note) => note.path === path)?.default;
  return { [group!]: { [name]: own } };
}
