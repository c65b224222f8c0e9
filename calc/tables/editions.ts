import type { Rules } from '../../routing/site/site.ts';
import type { CodeTables } from './code-tables.ts';
import { HELD } from './held.ts';

/** Tables where nothing says by which edition, and where those asked for are not held: the newest. */
export const [DEFAULT_TABLES] = HELD;

/** Names of the editions whose tables are held. */
export const EDITIONS: readonly string[] = HELD.map(({ edition }) => edition);

/**
 * Tables of the edition that `rules.code` names, such as `"NEC 2023"`; undefined where it is not held.
 * @example
 * // The edition is that of NFPA 70, 2023
 * tablesFor('NEC 2023')?.edition // 'NEC 2023'
 * tablesFor('NEC 1897') // undefined
 */
export const tablesFor = (code: string): CodeTables | undefined => HELD.find((tables) => tables.edition === code);

/** Tables that a site is planned by: those of its edition, or where they are not held the newest that are. */
export const tablesOf = ({ code }: Pick<Rules, 'code'>): CodeTables => tablesFor(code) ?? DEFAULT_TABLES;

/** The edition that a site is planned by, in words; where it asks for one that is not held, that too. */
export function editionWords(rules: Pick<Rules, 'code'>): string {
  const { edition } = tablesOf(rules);
  return edition === rules.code
    ? edition
    : `the tables of ${edition}: those of ${JSON.stringify(rules.code)} are not held`;
}
