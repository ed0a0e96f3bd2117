// The code for the first signing of a session: asked for here, sent another way.

import { useState } from 'react';
import { ask, problemFrom } from '../api/client.js';
import { TextField, type FieldErrors } from '../parts/fields.js';
import { useAnnounce } from '../shell/live.js';

const HOW = {
  'e-mail': 'It goes to your own mailbox and is good for ten minutes.',
  phone:
    'This office sends no e-mail. Ask for the code, then call: the project manager or administrator reads it out.',
} as const;

export function CodeField({
  comes,
  errors,
  value,
  onChange,
}: {
  readonly comes: keyof typeof HOW;
  readonly errors: FieldErrors;
  readonly value: string;
  readonly onChange: (value: string) => void;
}) {
  const say = useAnnounce();
  const [words, setWords] = useState('');
  const [busy, setBusy] = useState(false);
  const send = async () => {
    if (busy) return;
    setBusy(true);
    try {
      await ask('/session/signing/code', { method: 'POST' });
      const said =
        comes === 'e-mail'
          ? 'The code was sent to your mailbox.'
          : 'Asked for. Somebody of the office can now read the code out to you.';
      setWords(said);
      say(said);
    } catch (error) {
      const { title, detail } = problemFrom(error);
      setWords(detail ?? title);
    } finally {
      setBusy(false);
    }
  };
  return (
    <>
      <TextField
        id="signing-code"
        label="Code for signing"
        hint={`Six digits, asked once in a session. ${HOW[comes]}`}
        autoComplete="one-time-code"
        numeric
        errors={errors}
        value={value}
        onChange={onChange}
      />
      <div className="row">
        <button type="button" aria-disabled={busy} onClick={() => void send()}>
          {comes === 'e-mail' ? 'Send me the code' : 'Ask for the code'}
        </button>
        {words && <span className="quiet">{words}</span>}
      </div>
    </>
  );
}
