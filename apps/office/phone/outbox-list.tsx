// What waits to be sent, in words; what was refused, with the reason and what to do.

import { useEffect, useSyncExternalStore } from 'react';
import { moment } from '../parts/words.js';
import { again, drop, outbox, sendAll, subscribe } from './outbox.js';

export const useOutbox = () => useSyncExternalStore(subscribe, outbox);

export function Outbox({ person }: { readonly person: string }) {
  const list = useOutbox().filter((each) => each.person === person);
  useEffect(() => {
    const send = () => void sendAll(person);
    send();
    addEventListener('online', send);
    const timer = setInterval(send, 15_000);
    return () => {
      removeEventListener('online', send);
      clearInterval(timer);
    };
  }, [person]);
  return (
    <section className="stack tight" aria-label="Not sent yet">
      <p role="status">
        {list.length === 0
          ? 'Everything typed here has been sent.'
          : `${list.length} not sent yet. Kept on this phone; sent when there is a signal.`}
      </p>
      {list.map((each) => (
        <div
          key={each.key}
          className={each.refused ? 'notice blocked stack tight' : 'notice waiting'}
        >
          <p>
            {each.words} ({moment(each.typedAt)})
          </p>
          {each.refused && (
            <>
              <p>Refused: {each.refused}</p>
              <div className="row">
                <button type="button" onClick={() => void again(each.key, person)}>
                  Send again
                </button>
                <button type="button" onClick={() => drop(each.key)}>
                  Throw away
                </button>
              </div>
            </>
          )}
        </div>
      ))}
    </section>
  );
}
