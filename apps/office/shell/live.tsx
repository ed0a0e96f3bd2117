// One polite status region for the whole page: says what happened, focus unmoved.

import { createContext, useCallback, useContext, useState, type ReactNode } from 'react';

const Live = createContext<(words: string) => void>(() => undefined);

/** Says a sentence to people who do not see the page change. */
export const useAnnounce = (): ((words: string) => void) => useContext(Live);

export function LiveRegion({ children }: { readonly children: ReactNode }) {
  const [said, setSaid] = useState('');
  const say = useCallback((words: string) => {
    setSaid('');
    setTimeout(() => setSaid(words), 50);
  }, []);
  return (
    <Live value={say}>
      {children}
      <div role="status" className="visually-hidden">
        {said}
      </div>
    </Live>
  );
}
