// Help: the words of the pages, the stages, the keys.

import { Page } from './page.js';
import { PlainTable } from '../parts/table.js';

export const HelpPage = () => (
  <Page title="Help">
    <section className="stack">
      <h2>How a surface moves</h2>
      <p>
        Each roof or wall surface goes through six stages in order: style, coating, hazards,
        substrate, gauge, engineer sign-off. Facts may be recorded at any time. A stage can be
        confirmed when all stages before it are done.
      </p>
      <PlainTable
        caption="States of a stage"
        columns={['State', 'What it means']}
        rows={[
          ['done', 'Confirmed by a person, on facts that have not changed since.'],
          ['current', 'The next one to confirm.'],
          [
            'needs re-check',
            'Something it read has changed. Its content is kept; confirm it again.',
          ],
          ['waiting for the engineer', 'Asked, not answered yet.'],
          ['not needed', 'No rule and nobody asks for an engineer here.'],
        ]}
      />
    </section>
    <section className="stack">
      <h2>Corrections</h2>
      <p>
        Nothing recorded is erased. To correct an entry, record it again with a reason; both stay in
        the history, and the decision record can be read as of any moment.
      </p>
    </section>
    <section className="stack">
      <h2>Quick keys on the job list</h2>
      <PlainTable
        caption="Keys, where they are switched on"
        columns={['Key', 'Does']}
        rows={[
          ['/', 'Go to the find box'],
          ['j and k', 'Next and previous job'],
          ['n', 'Open a new job'],
          ['?', 'Show these keys, and switch them on or off'],
        ]}
      />
    </section>
  </Page>
);
