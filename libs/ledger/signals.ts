// What happened in this process: commits, and lists that came further. Nobody relies on them for
// correctness; they save waiting.

export interface Signals {
  appended(log: string, pos: number): void;
  onAppended(listener: (log: string, pos: number) => void): () => void;
  advanced(log: string, list: string, pos: number): void;
  /** How far the list came by this process; 0 when it does not keep it. */
  reached(log: string, list: string): number;
  /** Resolves at the list's next advance, and after `ms` milliseconds at the latest. */
  nextAdvance(log: string, list: string, ms: number): Promise<void>;
}

export function createSignals(): Signals {
  const listeners = new Set<(log: string, pos: number) => void>();
  const positions = new Map<string, number>();
  const waiting = new Map<string, Set<() => void>>();
  const key = (log: string, list: string) => `${log}\0${list}`;
  return {
    appended: (log, pos) => {
      for (const listener of listeners) listener(log, pos);
    },
    onAppended: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    advanced: (log, list, pos) => {
      const name = key(log, list);
      positions.set(name, pos);
      const woken = waiting.get(name) ?? [];
      waiting.delete(name);
      for (const wake of woken) wake();
    },
    reached: (log, list) => positions.get(key(log, list)) ?? 0,
    nextAdvance: (log, list, ms) =>
      new Promise((resolve) => {
        const name = key(log, list);
        const all = waiting.get(name) ?? new Set();
        const wake = () => {
          clearTimeout(timer);
          all.delete(wake);
          resolve();
        };
        const timer = setTimeout(wake, ms);
        all.add(wake);
        waiting.set(name, all);
      }),
  };
}
