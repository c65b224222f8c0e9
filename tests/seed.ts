import fc from 'fast-check';

/**
 * Property tests draw the same values in each run, so that a change is judged by what it changes.
 * `SEED=7 npm test` draws others.
 */
fc.configureGlobal({ seed: Number(process.env.SEED ?? 2026) });
