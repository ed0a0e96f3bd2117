// The page's title: "thing - section - product"; after a failed try it starts with "Error:".

import { useEffect } from 'react';

export function useTitle(parts: readonly string[], failed = false): void {
  const title = `${failed ? 'Error: ' : ''}${[...parts, 'Gauge Ledger'].filter(Boolean).join(' - ')}`;
  useEffect(() => {
    document.title = title;
  }, [title]);
}
