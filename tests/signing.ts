// For tests: both factors of a signed-in engineer, as they are given where no mail is set up.

import type { Client } from './service.js';

export const ENGINEERS_PASSWORD = 'a stone is not a beam';

/** Password and, where it is needed, a code that somebody else reads out; one signature may follow. */
export async function giveFactors(engineer: Client, other: Client): Promise<void> {
  await must(
    engineer.send('PUT', '/session/password', {
      password: ENGINEERS_PASSWORD,
      current: ENGINEERS_PASSWORD,
    }),
  );
  const { body } = await engineer.get<{ code_needed: boolean }>('/session/signing');
  const code = body.code_needed ? { code: await codeFor(engineer, other) } : {};
  await must(engineer.send('POST', '/session/signing', { password: ENGINEERS_PASSWORD, ...code }));
}

/** Asked for by the one, read out by the other. */
export async function codeFor(engineer: Client, other: Client): Promise<string> {
  await must(engineer.send('POST', '/session/signing/code'));
  const shown = await other.send<{ code: string }>(
    'POST',
    `/people/${engineer.person.id}/signing-codes`,
  );
  return (await must(Promise.resolve(shown))).code;
}

async function must<T>(answer: Promise<{ status: number; body: T }>): Promise<T> {
  const { status, body } = await answer;
  if (status >= 300) throw new Error(JSON.stringify(body));
  return body;
}
