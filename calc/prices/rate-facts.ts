/** What the estimator adds to material and hours, each by its name in the list. */
export interface RateFact {
  /** As the list names it. */
  readonly words: string;
  readonly group: 'labor' | 'material' | 'job' | 'sum';
  /** How it is written: dollars, a share of 1, a factor, a count. */
  readonly kind: 'dollars' | 'share' | 'factor' | 'count';
  /** What it is where a list does not give it: no addition, no change. */
  readonly without: number;
  /** In the list that is there from the start. All invented. */
  readonly invented: number;
  readonly basis: string;
}

const PRACTICE = 'common practice, no source';

/**
 * Every rate of an estimate. None is from a contractor's books; what each is laid on is common practice, and the figures of
 * the invented list are invented.
 */
export const RATE_FACTS = {
  labor: {
    words: 'labor, dollars an hour',
    group: 'labor',
    kind: 'dollars',
    without: 0,
    invented: 95,
    basis: 'wage of the crew on average, by 1 and the burden; a list that has a crew has no rate of its own',
  },
  burden: {
    words: 'burden, share of wages',
    group: 'labor',
    kind: 'share',
    without: 0,
    invented: 0.5,
    basis: `payroll taxes, insurance and benefits; ${PRACTICE}`,
  },
  height: {
    words: 'height factor on hours',
    group: 'labor',
    kind: 'factor',
    without: 1,
    invented: 1.15,
    basis: `on the hours of what is worked from a ladder, higher than the site rule "ladder from" says; ${PRACTICE}`,
  },
  lift: {
    words: 'lift factor on hours',
    group: 'labor',
    kind: 'factor',
    without: 0,
    invented: 1.25,
    basis: `on the hours of what is worked from a lift, higher than the site rule "lift from" says; that of the ladder where there is none; ${PRACTICE}`,
  },
  repetition: {
    words: 'repetition, hours at each doubling',
    group: 'labor',
    kind: 'factor',
    without: 1,
    invented: 0.97,
    basis:
      'learning curve on pieces: the average hours of twice as many alike are this share of what they were (T. P. Wright, 1936); the figure: common practice, no source',
  },
  alike: {
    words: 'repetition, pieces that the hours are for',
    group: 'labor',
    kind: 'count',
    without: 1,
    invented: 20,
    basis: `so many alike take the hours of the list, each doubling beyond it less; ${PRACTICE}`,
  },
  tax: {
    words: 'tax, share of material',
    group: 'material',
    kind: 'share',
    without: 0,
    invented: 0.07,
    basis: 'by where the job is',
  },
  freight: {
    words: 'freight, share of material',
    group: 'material',
    kind: 'share',
    without: 0,
    invented: 0.02,
    basis: PRACTICE,
  },
  consumables: {
    words: 'consumables, share of material',
    group: 'material',
    kind: 'share',
    without: 0,
    invented: 0.02,
    basis: PRACTICE,
  },
  tools: {
    words: 'small tools, share of labor',
    group: 'job',
    kind: 'share',
    without: 0,
    invented: 0.03,
    basis: PRACTICE,
  },
  liftDay: {
    words: 'lift, dollars a day',
    group: 'job',
    kind: 'dollars',
    without: 0,
    invented: 190,
    basis: 'for each day of hours that are worked from a lift',
  },
  liftHours: {
    words: 'lift, hours of labor a day',
    group: 'job',
    kind: 'count',
    without: 16,
    invented: 16,
    basis: `two hands on a lift for eight hours; ${PRACTICE}`,
  },
  permits: {
    words: 'permits and inspection, share of cost',
    group: 'job',
    kind: 'share',
    without: 0,
    invented: 0.015,
    basis: 'by the fee schedule of where the job is',
  },
  mobilization: {
    words: 'mobilization, dollars',
    group: 'job',
    kind: 'dollars',
    without: 0,
    invented: 1800,
    basis: PRACTICE,
  },
  traffic: {
    words: 'traffic control, dollars',
    group: 'job',
    kind: 'dollars',
    without: 0,
    invented: 250,
    basis: `the plan of it, and setting up once; what goes by the day is beside it; ${PRACTICE}`,
  },
  trafficDay: {
    words: 'traffic control, dollars a day',
    group: 'job',
    kind: 'dollars',
    without: 0,
    invented: 85,
    basis: `signs, cones and barricades, for each day that is dug or that a lift is there; ${PRACTICE}`,
  },
  flaggers: {
    words: 'flaggers, hands',
    group: 'job',
    kind: 'count',
    without: 0,
    invented: 1,
    basis: `who leads traffic on each such day; ${PRACTICE}`,
  },
  flagger: {
    words: 'flagger, dollars an hour',
    group: 'job',
    kind: 'dollars',
    without: 0,
    invented: 52,
    basis: 'wage with burden',
  },
  flaggerHours: {
    words: 'flagger, hours a day',
    group: 'job',
    kind: 'count',
    without: 8,
    invented: 8,
    basis: PRACTICE,
  },
  trafficHours: {
    words: 'traffic control, hours of ground work a day',
    group: 'job',
    kind: 'count',
    without: 24,
    invented: 24,
    basis: `three hands that dig for eight hours; ${PRACTICE}`,
  },
  contingency: {
    words: 'contingency, share of cost',
    group: 'sum',
    kind: 'share',
    without: 0,
    invented: 0.05,
    basis: PRACTICE,
  },
  overhead: {
    words: 'overhead, share of cost',
    group: 'sum',
    kind: 'share',
    without: 0,
    invented: 0.1,
    basis: PRACTICE,
  },
  margin: {
    words: 'margin, share of cost and overhead',
    group: 'sum',
    kind: 'share',
    without: 0,
    invented: 0.08,
    basis: PRACTICE,
  },
  bond: {
    words: 'bonds, share of the sum',
    group: 'sum',
    kind: 'share',
    without: 0,
    invented: 0.01,
    basis: 'by the surety',
  },
  restocking: {
    words: 'restocking, share of material that goes back',
    group: 'material',
    kind: 'share',
    without: 0,
    invented: 0.15,
    basis: 'in a change order where it is asked for; by the supplier',
  },
} as const satisfies Readonly<Record<string, RateFact>>;
