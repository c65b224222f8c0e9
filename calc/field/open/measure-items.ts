import { openTests, type TestSheet } from '../commissioning/commissioning.ts';
import { GROUP_WORDS, readingWords } from '../commissioning/measures.ts';
import type { OpenItem } from './open-items.ts';

/** Measures that fail, or are to be decided; of what is begun also how much is not measured. */
export const measureItems = (sheets: readonly TestSheet[]): readonly OpenItem[] =>
  sheets.flatMap(({ of, rows }): readonly OpenItem[] => {
    const open = openTests([{ rows }]);
    const missing = open.filter(({ standing }) => standing === 'not measured');
    if (rows.every(({ reading }) => reading === null)) return [];
    return [
      ...open
        .filter(({ standing }) => standing !== 'not measured' && standing !== 'two say')
        .map(
          ({ measure, reading, register, limit, standing, says }): OpenItem => ({
            kind: 'test',
            key: `measure ${of} ${measure.id}`,
            of,
            says: `${GROUP_WORDS[measure.group].toLowerCase()}, ${measure.name}: ${reading === null ? '' : readingWords(reading)} ${standing}, ${says}; asked ${limit.says}`,
            answer: null,
            by: register?.now?.by ?? '',
            on: register?.now?.on ?? '',
          }),
        ),
      ...(missing.length === 0
        ? []
        : [
            {
              kind: 'test' as const,
              key: `measures ${of}`,
              of,
              says: `${missing.length} of ${rows.length} tests not measured`,
              by: '',
              on: '',
              answer: null,
            },
          ]),
    ];
  });
