// Answers asked for before the pages' own code was there: each is taken once, by the request that would
// have asked the same.

const KEPT_MS = 10_000;
const begun = new Map<string, Promise<Response>>();

/** Asks now; what nobody takes soon is forgotten, so that nothing old is shown. */
export function begin(path: string): Promise<Response> {
  const answer = fetch(`/api${path}`, {
    headers: { accept: 'application/json' },
    credentials: 'same-origin',
  });
  // Who takes it hears of a lost connection; without a taker it is nobody's fault.
  answer.catch(() => undefined);
  begun.set(path, answer);
  setTimeout(() => begun.delete(path), KEPT_MS);
  return answer;
}

export const hasBegun = (path: string): boolean => begun.has(path);

export function takeBegun(path: string): Promise<Response> | undefined {
  const answer = begun.get(path);
  begun.delete(path);
  return answer;
}

export const forgetBegun = (): void => begun.clear();
