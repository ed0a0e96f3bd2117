// Erasure of a person's or a site's details by two administrators, legal holds, retention periods.

import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { disposalQuery } from '../api/disposal.js';
import { Failure, Loading } from '../parts/states.js';
import { Page } from '../shell/page.js';
import { AdminNav } from './admin-nav.js';
import { AskOrHold } from './ask-or-hold.js';
import { Erasures } from './erasures.js';
import { Holds } from './holds.js';
import { Periods } from './periods.js';

export function DisposalPage() {
  const found = useQuery(disposalQuery);
  return (
    <Page
      title="Erasure and holds"
      section="Admin"
      lead={
        <p>
          What can be erased are the details of people and sites, and the prints that name them.
          Entries of the record stay, and so does that somebody was erased. One administrator asks,
          another confirms; each act is an entry of the record.
        </p>
      }
    >
      <AdminNav />
      {found.isPending && <Loading what="erasures and holds" />}
      {found.error && <Failure error={found.error} retry={() => void found.refetch()} />}
      {found.data && (
        <>
          {found.data.administrators < 2 && (
            <div className="notice blocked">
              <p>
                <strong>There is one administrator here.</strong> An erasure can be asked for and
                nobody can confirm it. <Link to="/admin">Add a second one under People</Link>.
              </p>
            </div>
          )}
          <Erasures erasures={found.data.erasures} />
          <Holds holds={found.data.holds} />
          <AskOrHold />
          <Periods periods={found.data.retention} />
        </>
      )}
    </Page>
  );
}
