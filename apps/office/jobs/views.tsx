// Saved views: filters with a name, kept on this machine.

import { useState } from 'react';
import { Dialog } from '../parts/dialog.js';
import { SelectField, TextField } from '../parts/fields.js';
import { BUILT_IN, dropView, sameFilter, savedViews, saveView } from './filter.js';
import type { Filter } from './query.js';

export function Views({
  filter,
  go,
  me,
}: {
  readonly filter: Filter;
  readonly go: (next: Filter) => void;
  readonly me: string;
}) {
  const [naming, setNaming] = useState(false);
  const [name, setName] = useState('');
  const [own, setOwn] = useState(savedViews);
  const all = [...BUILT_IN(me), ...own];
  const here = all.find((view) => sameFilter(view.filter, filter))?.name ?? '';
  const mine = own.some((view) => view.name === here);
  const keep = () => {
    if (name.trim() === '') return;
    saveView({ name: name.trim(), filter });
    setOwn(savedViews());
    setNaming(false);
    setName('');
  };
  return (
    <div className="row bottoms no-print">
      <SelectField
        id="view"
        label="View"
        value={here}
        {...(here ? {} : { empty: 'Filters of my own' })}
        options={all.map((view) => ({ value: view.name, label: view.name }))}
        onChange={(chosen) => go(all.find((view) => view.name === chosen)?.filter ?? {})}
      />
      {here === '' && (
        <button type="button" onClick={() => setNaming(true)}>
          Save these filters as a view
        </button>
      )}
      {mine && (
        <button
          type="button"
          onClick={() => {
            dropView(here);
            setOwn(savedViews());
          }}
        >
          Remove this view
        </button>
      )}
      <Dialog title="Save these filters as a view" open={naming} close={() => setNaming(false)}>
        <TextField
          id="view-name"
          label="Name of the view"
          value={name}
          onChange={setName}
          autoFocus
        />
        <div className="row">
          <button type="button" className="main" onClick={keep}>
            Save the view
          </button>
          <button type="button" onClick={() => setNaming(false)}>
            Cancel
          </button>
        </div>
      </Dialog>
    </div>
  );
}
