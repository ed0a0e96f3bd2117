// What is the same in every zone of a question and costs something to find.

import type { Question } from './question.js';

/**
 * `find` by key, found once for a question. Only the question asked last is kept: an evaluation asks
 * all its zones in a row, and nothing is held longer than that.
 */
export function keptForQuestion<T>(): (question: Question, key: string, find: () => T) => T {
  let last: { readonly question: Question; readonly found: Map<string, T> } | undefined;
  return (question, key, find) => {
    if (last?.question !== question) last = { question, found: new Map() };
    const { found } = last;
    if (found.has(key)) return found.get(key) as T;
    const made = find();
    found.set(key, made);
    return made;
  };
}
