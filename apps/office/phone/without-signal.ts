// Keeps the phone page on the phone, so that it opens and reloads without a signal; and forgets what it
// read of jobs when somebody signs out or another person signs in.

import { useEffect, useState } from 'react';

const READ = 'phone-read';
const OWNER = 'phone person';

/** True once a reload without a signal brings this page back. */
export function useKeptOnPhone(person: string): boolean {
  const [kept, setKept] = useState(false);
  useEffect(() => {
    if (person === '' || !('serviceWorker' in navigator)) return;
    let here = true;
    void keep(person).then(
      (done) => here && setKept(done),
      () => undefined,
    );
    return () => {
      here = false;
    };
  }, [person]);
  return kept;
}

async function keep(person: string): Promise<boolean> {
  if (localStorage.getItem(OWNER) !== person) await forgetPhone();
  localStorage.setItem(OWNER, person);
  await navigator.serviceWorker.register('/phone-worker.js', { scope: '/phone' });
  const { active } = await navigator.serviceWorker.ready;
  if (!active) return false;
  const loaded = performance.getEntriesByType('resource').map(({ name }) => name);
  const { port1, port2 } = new MessageChannel();
  return new Promise((resolve) => {
    port1.onmessage = () => resolve(true);
    active.postMessage({ keep: [new URL('/phone', location.href).href, ...loaded] }, [port2]);
  });
}

/** What the phone page read of jobs and people leaves this phone; what was typed stays. */
export async function forgetPhone(): Promise<void> {
  localStorage.removeItem(OWNER);
  if ('caches' in window) await caches.delete(READ);
}
