// Quick keys of the list. Single letters can be switched off, for people who speak to their machine.

import { useNavigate } from '@tanstack/react-router';
import { useEffect, useState } from 'react';
import { Dialog } from '../parts/dialog.js';
import { Tick } from '../parts/fields.js';

const KEY = 'quick keys';
const KEYS = [
  ['/', 'Go to the find box'],
  ['j', 'Next job'],
  ['k', 'Previous job'],
  ['n', 'Open a new job'],
  ['?', 'Show these keys'],
] as const;

export function QuickKeys() {
  const navigate = useNavigate();
  const [on, setOn] = useState(() => localStorage.getItem(KEY) !== 'off');
  const [open, setOpen] = useState(false);
  useEffect(() => {
    if (!on) return;
    const press = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey || typing(event.target)) return;
      if (event.key === '/') document.getElementById('find')?.focus();
      else if (event.key === 'j') step(1);
      else if (event.key === 'k') step(-1);
      else if (event.key === 'n') void navigate({ to: '/jobs/new' });
      else if (event.key === '?') setOpen(true);
      else return;
      event.preventDefault();
    };
    addEventListener('keydown', press);
    return () => removeEventListener('keydown', press);
  }, [on, navigate]);
  return (
    <p className="no-print">
      <button type="button" className="as-link" onClick={() => setOpen(true)}>
        Quick keys
      </button>
      <Dialog title="Quick keys" open={open} close={() => setOpen(false)}>
        <dl className="facts">
          {KEYS.flatMap(([key, does]) => [
            <dt key={key}>{key}</dt>,
            <dd key={`${key} does`}>{does}</dd>,
          ])}
        </dl>
        <Tick
          id="quick-keys-on"
          label="Quick keys are on"
          checked={on}
          onChange={(now) => {
            localStorage.setItem(KEY, now ? 'on' : 'off');
            setOn(now);
          }}
        />
        <button type="button" onClick={() => setOpen(false)}>
          Close
        </button>
      </Dialog>
    </p>
  );
}

const typing = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  target.closest('input:not([type=checkbox]), select, textarea, [role=dialog]') !== null;

function step(by: 1 | -1): void {
  const links = [...document.querySelectorAll<HTMLElement>('.job-list .row-link')];
  const here = links.indexOf(document.activeElement as HTMLElement);
  const next = here < 0 ? (by === 1 ? 0 : links.length - 1) : here + by;
  links[Math.min(Math.max(next, 0), links.length - 1)]?.focus();
}
