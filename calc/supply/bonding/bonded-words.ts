import { ELECTRODE_WORDS } from '../../../routing/site/schema/vocabulary.ts';
import type { Bonded } from '../../plan-file/supply.ts';
import { jumperName } from './bonded.ts';

const size = (name: string | null, metal: string): string =>
  name === null ? 'a busbar' : `${Number(name) >= 250 ? `${name} kcmil` : `${name} AWG`} ${metal}`;

/** The jumper and the electrode conductor of a place in words, a line each; none where no conductor is known to go by. */
export const bondedWords = ({ of, jumper, electrodeConductor, electrode }: Bonded): readonly string[] => [
  ...(jumper === undefined ? [] : [`${jumperName(of)} ${size(jumper.size, jumper.metal)}`]),
  ...(electrodeConductor === undefined
    ? []
    : [
        `electrode conductor ${size(electrodeConductor.size, electrodeConductor.metal)} to ${electrode === undefined ? 'an electrode not given' : ELECTRODE_WORDS[electrode]}`,
      ]),
];
