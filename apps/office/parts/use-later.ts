// A value that follows its source after a pause, so that not every key asks the service.

import { useEffect, useState } from 'react';

export function useLater<T>(value: T, ms: number): T {
  const text = JSON.stringify(value);
  const [late, setLate] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => setLate(JSON.parse(text) as T), ms);
    return () => clearTimeout(timer);
  }, [text, ms]);
  return late;
}
