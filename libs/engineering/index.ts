// Numbers: what weather demands, what steel and screws bear. Knows no job, no person, no clock; every
// result carries its steps and their clauses. Start with wind/ or panel/; calculators.ts lists all.

export * from './units.js';
export * from './sources.js';
export * from './check.js';
export * from './input.js';
export * from './calculator.js';
