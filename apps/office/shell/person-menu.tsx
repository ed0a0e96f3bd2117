// The person's menu: how the pages look, password, sign-out. Its code comes once the first page stands.

import { useNavigate } from '@tanstack/react-router';
import type { RefObject } from 'react';
import { Menu, MenuItem, Popover } from 'react-aria-components';
import type { Session } from '../api/answers.js';
import { applyLook, LOOKS } from './look.js';

export default function PersonMenu({
  session,
  button,
  close,
  leave,
}: {
  readonly session: Session;
  readonly button: RefObject<HTMLButtonElement | null>;
  readonly close: () => void;
  readonly leave: () => void;
}) {
  const navigate = useNavigate();
  return (
    <Popover
      className="menu"
      placement="bottom end"
      triggerRef={button}
      isOpen
      onOpenChange={(open) => !open && close()}
    >
      <Menu
        autoFocus="first"
        aria-label={`${session.person.name}, ${session.company.name}`}
        onClose={close}
        onAction={(key) => {
          if (key === 'password') void navigate({ to: '/password' });
          else if (key === 'leave') leave();
          else applyLook(LOOKS[Number(key)]);
        }}
      >
        {LOOKS.map((name, i) => (
          <MenuItem key={name} id={String(i)}>
            Look: {name}
          </MenuItem>
        ))}
        <MenuItem id="password">Password and mail</MenuItem>
        <MenuItem id="leave">Sign out</MenuItem>
      </Menu>
    </Popover>
  );
}
