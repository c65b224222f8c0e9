import type { ProposalPart } from '../../propose/part.ts';
import { measureWords } from '../../propose/part-words.ts';

/** What there is to say of a part of a proposal, as lines on a terminal. */
export function proposedPartText(part: ProposalPart): string {
  const { what, says, without } = part;
  const measure = measureWords(part);
  return [
    `${what[0]!.toUpperCase()}${what.slice(1)}`,
    ...says.map((one) => `  ${one}`),
    ...(measure === null ? [] : [`  ${measure}`]),
    ...without.map((one) => `  without: ${one.says}`),
  ].join('\n');
}
