// Without e-mail the code for signing is read out by phone: to the engineer who asked, by somebody else.

import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import type { Colleague } from '../api/answers.js';
import { ask, problemFrom } from '../api/client.js';
import { peopleQuery } from '../api/queries.js';
import { Dialog } from '../parts/dialog.js';

/** Of every engineer: a revocation is signed too, and nothing waits for it in the queue. */
export function GiveCode() {
  const people = useQuery(peopleQuery).data?.people ?? [];
  const engineers = people.filter(({ roles }) => roles.includes('engineer'));
  const [told, setTold] = useState<{ readonly name: string; readonly words: string } | null>(null);
  const show = async ({ id, name }: Colleague) => {
    try {
      const { value } = await ask<{ code: string; minutes: number }>(
        `/people/${id}/signing-codes`,
        { method: 'POST' },
      );
      setTold({
        name,
        words: `${value.code.slice(0, 3)} ${value.code.slice(3)}: good for ${value.minutes} minutes. Call ${name} on a number you know; never answer a call that asks for it.`,
      });
    } catch (error) {
      const { title, detail } = problemFrom(error);
      setTold({ name, words: detail ?? title });
    }
  };
  if (engineers.length === 0) return null;
  return (
    <details>
      <summary>Read out a code for signing</summary>
      <p className="quiet">
        An engineer signs with a password and a code. Where the office sends no e-mail, the engineer
        asks for the code on the review page, and you read it out by phone.
      </p>
      <div className="row">
        {engineers.map((engineer) => (
          <button key={engineer.id} type="button" onClick={() => void show(engineer)}>
            Code for {engineer.name}
          </button>
        ))}
      </div>
      <Dialog
        title={`Code for ${told?.name ?? ''}`}
        open={told !== null}
        close={() => setTold(null)}
      >
        <p>{told?.words}</p>
        <div>
          <button type="button" onClick={() => setTold(null)}>
            Close
          </button>
        </div>
      </Dialog>
    </details>
  );
}
