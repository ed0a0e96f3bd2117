// What was typed is kept in this tab until it is saved or thrown away: over a reload, a lost
// connection, an ended session.

import { useCallback, useRef, useState } from 'react';

export interface Draft<T> {
  readonly value: T;
  readonly set: (change: Partial<T>) => void;
  readonly clear: () => void;
  /** True where the values came back from an earlier visit. */
  readonly restored: boolean;
}

export function useDraft<T extends object>(name: string, initial: T): Draft<T> {
  const key = `draft ${name}`;
  const start = useRef(initial);
  const [state, setState] = useState(() => {
    const kept = read<T>(key);
    return { value: kept ? { ...initial, ...kept } : initial, restored: kept !== undefined };
  });
  const set = useCallback(
    (change: Partial<T>) => {
      setState(({ value, restored }) => {
        const next = { ...value, ...change };
        write(key, next);
        return { value: next, restored };
      });
    },
    [key],
  );
  const clear = useCallback(() => {
    sessionStorage.removeItem(key);
    setState({ value: start.current, restored: false });
  }, [key]);
  return { value: state.value, set, clear, restored: state.restored };
}

function read<T>(key: string): T | undefined {
  try {
    const text = sessionStorage.getItem(key);
    return text === null ? undefined : (JSON.parse(text) as T);
  } catch {
    return undefined;
  }
}

function write(key: string, value: unknown): void {
  try {
    sessionStorage.setItem(key, JSON.stringify(value));
  } catch {
    // A full or forbidden store loses only the copy; what is on the page stays.
  }
}

/** Whether anything typed in this tab is not saved yet. */
export const unsaved = (): boolean =>
  Object.keys(sessionStorage).some((key) => key.startsWith('draft '));
