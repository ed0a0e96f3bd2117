// The story of a job: what was decided, on which facts, and what a change reopens. Pure: time and
// person arrive in the command. Start with job.ts.

export * from './contract.js';
