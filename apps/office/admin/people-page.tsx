// People of the company: who is here, their roles, adding one, closing an account.

import { useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { label } from '#jobs/contract';
import type { User } from '../api/answers.js';
import { ask, problemFrom } from '../api/client.js';
import { sessionQuery, usersQuery } from '../api/queries.js';
import { Dialog } from '../parts/dialog.js';
import { CheckField } from '../parts/fields.js';
import { Failure, Loading } from '../parts/states.js';
import { Heads, ScrollTable } from '../parts/table.js';
import { capital } from '../parts/words.js';
import { useAnnounce } from '../shell/live.js';
import { Page } from '../shell/page.js';
import { AddPerson } from './add-person.js';
import { ROLE_OPTIONS } from './role-options.js';
import { AdminNav } from './admin-nav.js';

export function PeoplePage() {
  const users = useQuery(usersQuery);
  const [changing, setChanging] = useState<User | null>(null);
  return (
    <Page title="People" section="Admin">
      <AdminNav />
      {users.isPending && <Loading what="the people" />}
      {users.error && <Failure error={users.error} retry={() => void users.refetch()} />}
      {users.data && (
        <>
          <ScrollTable caption="People of the company">
            <Heads names={['Name', 'Email', 'Roles', 'Account', 'Change']} />
            <tbody>
              {users.data.users.map((user) => (
                <tr key={user.id}>
                  <th scope="row">{user.name}</th>
                  <td>{user.email}</td>
                  <td>{user.roles.map((role) => capital(label(role))).join(', ')}</td>
                  <td>{user.active ? 'Open' : 'Closed'}</td>
                  <td>
                    <button type="button" onClick={() => setChanging(user)}>
                      Change<span className="visually-hidden"> {user.name}</span>
                    </button>
                  </td>
                </tr>
              ))}
            </tbody>
          </ScrollTable>
          <AddPerson />
        </>
      )}
      {changing && (
        <ChangePerson key={changing.id} user={changing} close={() => setChanging(null)} />
      )}
    </Page>
  );
}

function ChangePerson({ user, close }: { readonly user: User; readonly close: () => void }) {
  const client = useQueryClient();
  const say = useAnnounce();
  const me = useQuery(sessionQuery).data?.person.id;
  const [roles, setRoles] = useState<readonly string[]>(user.roles);
  const [words, setWords] = useState('');
  const send = async (body: object, said: string) => {
    try {
      await ask(`/users/${user.id}`, { method: 'PATCH', body });
      await client.invalidateQueries({ queryKey: ['users'] });
      void client.invalidateQueries({ queryKey: ['people'] });
      say(said);
      close();
    } catch (error) {
      const { title, detail } = problemFrom(error);
      setWords(detail ?? title);
    }
  };
  return (
    <Dialog title={`Change ${user.name}`} open close={close}>
      {words && (
        <p role="alert" className="problem">
          {words}
        </p>
      )}
      <CheckField
        id="change-roles"
        label="Roles"
        hint="Changing roles signs the person out everywhere"
        options={ROLE_OPTIONS}
        values={roles}
        onChange={setRoles}
      />
      <div className="row">
        <button
          type="button"
          className="main"
          aria-disabled={roles.length === 0}
          onClick={() =>
            roles.length === 0
              ? setWords('Choose at least one role, or close the account')
              : void send({ roles }, 'Roles saved.')
          }
        >
          Save the roles
        </button>
        <button type="button" onClick={close}>
          Cancel
        </button>
      </div>
      {user.id !== me && (
        <div className="row">
          <button
            type="button"
            className="danger"
            onClick={() =>
              void send(
                { active: !user.active },
                user.active ? 'Account closed.' : 'Account opened.',
              )
            }
          >
            {user.active ? 'Close the account' : 'Open the account again'}
          </button>
        </div>
      )}
    </Dialog>
  );
}
