// Judgements: one rule a value, one file a stage. Knows the trade's facts and sources; refuses to
// know jobs, people, clocks and databases. Start with rule.ts, then gauge.ts.

export * from './words.js';
export * from './facts.js';
export * from './rule.js';
export * from './edition.js';
