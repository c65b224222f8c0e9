import type { IssuedCircuit, SiteFile } from '../../../routing/site/site.ts';
import type { Lines } from '../../../routing/site/vocabulary.ts';
import type { Edit, Step } from '../edit.ts';
import { type ElementOf, elementsOf } from '../element-lists.ts';
import { setStep } from '../set-field.ts';
import { alike, changeStep, held } from './gather.ts';
import { inWords } from './in-words.ts';

type Circuits = Readonly<Record<string, IssuedCircuit>>;

/**
 * Feeds chargers from a piece of equipment, on the lines that are given or, without, on those that balance it. What was
 * issued of them elsewhere is let go; with lines they are issued on these, so that later plans keep them there.
 */
export function feedChargers(file: SiteFile, ids: readonly string[], panel: string, lines?: Lines): Edit {
  const refs = ids.map((id) => ({ list: 'chargers', id }) as const);
  const chargers = held(file, refs);
  const own = new Set(chargers.map(({ element }) => element.id));
  const moves = chargers.flatMap(({ list, element }) =>
    changeStep(list, element, { ...(element as ElementOf<'chargers'>), from: panel }),
  );
  const was = file.issued?.circuits ?? {};
  const fed = new Map(elementsOf(file, 'chargers').map(({ id, from }) => [id, from]));
  const isLost = (id: string): boolean => own.has(id) && (lines !== undefined || fed.get(id) !== panel);
  const kept = Object.entries(was).filter(([id]) => !isLost(id));
  const issued = lines === undefined ? [] : [...own].map((id) => [id, { panel, phases: lines }] as const);
  const steps = [...moves, ...issueSteps(file, Object.fromEntries([...kept, ...issued]))];
  const where = lines === undefined ? panel : `${lines} of ${panel}`;
  return { name: `Feed ${inWords(refs)} from ${where}`, steps };
}

/** The step to other issued circuits; none where they are the same. */
function issueSteps(file: SiteFile, circuits: Circuits): readonly Step[] {
  const was = file.issued?.circuits ?? {};
  if (alike(was, circuits)) return [];
  const { circuits: _, ...others } = file.issued ?? {};
  const isEmpty = Object.keys(circuits).length === 0;
  const after = isEmpty ? others : { ...others, circuits };
  return [setStep(file, 'issued', Object.keys(after).length === 0 ? undefined : after)];
}
