import type { OptionName } from './option-words.ts';

/** What the words of each verb are: how it is called, and the options that it takes. */
export interface VerbWords {
  /** Lines of the usage: the words, then what they do. */
  readonly usage: readonly (readonly [words: string, does: string])[];
  readonly options: readonly OptionName[];
}

export const VERBS = {
  plan: {
    usage: [
      ['plan FILE... [--json]', 'the plan of each site file: a summary, or one line of JSON a file'],
      ['  --keep-going', 'with --json: a file that cannot be read has a line that says why, and the rest are planned'],
      ['plan FILE... --out DIR', 'every sheet of each, written to that folder'],
      ['  --only pdf,xlsx', 'only the sheets whose names end so: pdf, dxf, svg, xlsx, csv, runs.csv, ifc, ...'],
      ['  --set permit', 'the drawing set for a purpose: permit, bid, construction or as-built'],
      [
        '  --sheets plan,panels',
        'the drawing set of these parts alone; a wrong one is answered with all that there are',
      ],
      [
        '  --page https://HOST/PATH/',
        'the address of the page that the codes on pull cards open; without it, no codes',
      ],
      ['  --prices CSV', "by this price list, or a supplier's laid over the built-in one"],
      ['  --words CSV', "what the supplier's words mean, as prices --supplier asks it"],
      [
        '  --bid-day 2026-12-31',
        'the day that quotes must hold on; that of the latest issue in the file where it is not given',
      ],
    ],
    options: ['json', 'all', 'out', 'only', 'set', 'sheets', 'page', 'prices', 'words', 'bid-day', 'keep-going'],
  },
  check: {
    usage: [
      [
        'check FILE... [--json]',
        'the findings, which checks were made and what nobody looked at; exit status 1 where one fails',
      ],
      ['  --phase N', 'of each lot as it stands when that phase of its build-out is done'],
      ['  --all', 'each finding by itself, and not those alike in one line; plan takes it too'],
    ],
    options: ['json', 'all', 'phase'],
  },
  day: {
    usage: [
      [
        'day FILE [--json]',
        'each day of charging in the file: what cars get under each rule, beside the best that any schedule could give',
      ],
      ['  --day ID', 'only that day'],
    ],
    options: ['json', 'day'],
  },
  compare: {
    usage: [
      [
        'compare FILE FILE...',
        'two to six alternatives side by side, differences first [--json] [--prices CSV] [--words CSV] [--bid-day DAY]',
      ],
      ['  --day ID', 'the charging day that decides, of several; without it the hardest'],
      ['  --changes', 'what the second of two versions changes in the first, and its change order'],
      ['  --restocking', 'with --changes: material that goes back costs the share of the price list'],
      [
        '  --changes --out DIR',
        'and the drawings of it, clouded and marked by the newest issue of the second [--only, --set, --sheets as for plan]',
      ],
    ],
    options: ['json', 'changes', 'restocking', 'prices', 'words', 'bid-day', 'out', 'only', 'set', 'sheets', 'day'],
  },
  propose: {
    usage: [
      [
        'propose FILE --what WHAT --out FILE',
        'the site with drops, raceways or equipment proposed, or all, written to that file',
      ],
      ['  --replace', 'write over a file that stands there already'],
      ['  --cords N', 'cords a drop [--prices CSV] [--json]'],
      [
        '  --seconds N',
        'the best that is found in about so long; an interrupt, Ctrl-C, ends with the best so far as well',
      ],
      [
        '  --load LOAD',
        'chargers at full rate (full), or managed: 20kWh/8h for each car, 180A for the lot, or what its charging days need (day)',
      ],
      [
        '  --feeders METAL',
        'new feeders of copper or aluminum, with equipment or all; of the metal of the rules without it, and what the other would come to is said',
      ],
      [
        '  --row S05',
        'drops, raceways or all anew for the row of that stall and for nothing else: all else stays as it is drawn, chargers keep names, ratings and panels',
      ],
      [
        '  --later S09,S10',
        'with all: these stalls get their chargers in phase 2, all is laid out for both, and priced by phase',
      ],
      ['  --panel P1', 'likewise for all that this panel feeds; the panel stays'],
      ['  --only D03,D04', 'likewise for these drops, chargers or stalls'],
      ['  --keep D05,R02', 'with one of these three: what stays in it too'],
      [
        'propose FILE --what mend --out FILE',
        'the cheapest mend of what fails at chargers, every other run as it is; with the price of leaving it as drawn',
      ],
      ['  --before FILE', 'only of what did not fail before, in this older file of the same lot'],
    ],
    options: [
      'what',
      'out',
      'replace',
      'cords',
      'load',
      'feeders',
      'seconds',
      'row',
      'panel',
      'only',
      'keep',
      'before',
      'later',
      'prices',
      'json',
    ],
  },
  issue: {
    usage: [
      [
        'issue SITE --out FILE',
        'the site with the numbers and names of its circuits, conduits and boxes kept as they are now, for later revisions',
      ],
      ['  --mark A --text "for permit"', 'and a line in the history of issues [--replace]'],
    ],
    options: ['out', 'replace', 'mark', 'text'],
  },
  merge: {
    usage: [
      [
        'merge SITE FILE...',
        'the site with what others wrote down of it in the field, out of records files or its copies',
      ],
      [
        '  --out FILE',
        'written to that file; only the records where its name ends in .records.json, with photos in .records.zip',
      ],
      ['  --replace', 'write over a file that stands there already [--json]'],
    ],
    options: ['out', 'replace', 'json'],
  },
  handover: {
    usage: [
      [
        'handover SITE FILE... --out DIR',
        'what is handed over of the work, with the records and photos of the others in it: drawing set as built, checklist, what is still open',
      ],
      ['  --prices CSV', 'by this price list, for quotes that ran out [--bid-day DAY]'],
    ],
    options: ['out', 'prices', 'bid-day'],
  },
  study: {
    usage: [
      [
        'study FILE --out DIR',
        'the ways to do the job side by side: a site file and a plan of each, and their comparison as CSV, XLSX and PDF',
      ],
      ['  --stay HOURS', 'how long cars stay, all there at once, where the file has no charging day; 4 unless said'],
      ['  --day ID', 'the charging day that decides, of several; without it the hardest'],
      [
        '  --replace',
        'write over a study that stands there already; what is left of that one goes, unless somebody changed it',
      ],
      [
        '  --seconds N',
        'the ways that can be drawn in about so long; an interrupt, Ctrl-C, ends with those that are done as well',
      ],
      ['  --json', 'all figures as one line of JSON; goes without --out too [--prices CSV]'],
    ],
    options: ['out', 'stay', 'day', 'replace', 'seconds', 'prices', 'json'],
  },
  calc: {
    usage: [
      [
        'calc KIND [--explain]',
        'one calculation: JSON objects on standard input, one a line; one line out for each, with its steps',
      ],
      ['  --keep-going', 'a line that is wrong has a line out that says why, and the rest are worked'],
    ],
    options: ['explain', 'keep-going'],
  },
  new: {
    usage: [
      [
        'new --stalls N [--out FILE]',
        'a site file to start from, with canopy, drops, panel and raceways of invented sizes',
      ],
      ['  --rows 1|2 --name TEXT', 'one row or two, and what the lot is called'],
      ['  --replace', 'write over a file that stands there already'],
    ],
    options: ['stalls', 'rows', 'name', 'out', 'replace'],
  },
  prices: {
    usage: [
      ['prices', 'the built-in price list, as CSV: every figure invented, a form to fill in'],
      ['prices FILE...', 'the lines that these sites need, without figures, to be filled in'],
      ['  --prices CSV', 'only those that this list lacks, or has by a line for any size'],
      [
        'prices --supplier CSV [FILE...]',
        "the words of a supplier's list that are not known, with what they come near to (of what these sites need): fill in what each means, and give the file back as --words",
      ],
      ['  --words CSV', 'what is known already'],
    ],
    options: ['prices', 'supplier', 'words'],
  },
  schema: { usage: [['schema', 'the JSON Schema of the site file']], options: [] },
} as const satisfies Readonly<Record<string, VerbWords>>;
export type Verb = keyof typeof VERBS;

export const isVerb = (word: string | undefined): word is Verb => word !== undefined && Object.hasOwn(VERBS, word);

const WIDTH = 26;

/** The usage of some verbs as lines. */
export const usageOf = (verbs: readonly Verb[]): string =>
  verbs
    .flatMap((verb) => (VERBS[verb] as VerbWords).usage)
    .map(([words, does]) =>
      words.length < WIDTH ? `  ${words.padEnd(WIDTH)}${does}` : `  ${words}\n  ${' '.repeat(WIDTH)}${does}`,
    )
    .join('\n');
