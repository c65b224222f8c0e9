import { counted } from '../../../routing/words/counted.ts';
import type { Broken } from './broken.ts';
import type { Mend } from './mend.ts';

/** What is broken, finding by finding, the first of them and how many more. */
export function brokeWords({ findings }: Broken, most: number): readonly string[] {
  const more = findings.length - most;
  return [
    ...findings.slice(0, most).map(({ says }) => says),
    ...(more > 0 ? [`And ${counted(more, 'finding')} more.`] : []),
  ];
}

/** What it costs to leave it, and what the mend does and costs. A bid leaves out what has no way. */
export function mendWords({ left, mended }: Pick<Mend, 'left' | 'mended'>, money: (amount: number) => string): string {
  const fails = (count: number): string =>
    count === 0 ? 'nothing fails' : counted(count, 'finding fails', 'findings fail');
  const asDrawn = `Left as it is drawn: ${money(left.price)}, ${fails(left.fails)}.`;
  if (mended === null)
    return `${asDrawn} No mend was found that leaves every other run as it is: undo, or propose more of the lot anew.`;
  const more = mended.price - left.price;
  const off = Math.abs(more) < 0.005 ? 'the same' : `${money(Math.abs(more))} ${more > 0 ? 'more' : 'less'}`;
  return `${asDrawn} Mended: ${money(mended.price)}, ${off}; ${fails(mended.fails)}. ${mended.says}`;
}
