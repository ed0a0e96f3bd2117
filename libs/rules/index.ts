// Judgements: what may be chosen for a surface, what is due before an order, what a claim needs,
// each with its words, numbers and source. Knows no person, no clock, no catalogue and no other
// rule's answer: it sees only the facts it is given. Start with rule.ts, then style.ts, then
// edition.ts.

export * from './words.js';
export * from './facts.js';
export * from './gate-facts.js';
export * from './rule.js';
export * from './edition.js';
export * from './editions.js';
export { ALL_RULES, RULE_BOOK, type RuleId } from './rules.js';
export { CASES } from './cases/cases.js';
export type { RuleCases } from './cases/rule-cases.js';
