// Find box and plain selects; a line says which filters apply, each removable.

import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useEffect, useState, type FormEvent } from 'react';
import { peopleQuery } from '../api/queries.js';
import { SelectField, TextField } from '../parts/fields.js';
import { DUE_OPTIONS, filterWords, STAGE_OPTIONS, STATES } from './filter.js';
import { FILTERS, type Filter, type FilterName } from './query.js';

export function FilterRow({
  filter,
  go,
}: {
  readonly filter: Filter;
  readonly go: (next: Filter) => void;
}) {
  const people = useQuery({ ...peopleQuery, retry: false }).data?.people ?? [];
  const [find, setFind] = useState(filter.find ?? '');
  useEffect(() => setFind(filter.find ?? ''), [filter.find]);
  const set = (name: FilterName) => (value: string) => go(without({ ...filter, [name]: value }));
  const submit = (event: FormEvent) => {
    event.preventDefault();
    set('find')(find.trim());
  };
  const person = (id: string) => people.find((each) => each.id === id)?.name ?? id;
  const options = people.map(({ id, name }) => ({ value: id, label: name }));
  const applied = FILTERS.filter((name) => filter[name]);
  return (
    <div className="stack">
      <form className="filters" role="search" aria-label="Jobs" onSubmit={submit}>
        <TextField
          id="find"
          label="Find: number, name, client or site"
          type="search"
          value={find}
          onChange={setFind}
        />
        <button type="submit">Find</button>
        <SelectField
          id="stage"
          label="Stage"
          empty="Any stage"
          options={STAGE_OPTIONS}
          value={filter.stage ?? ''}
          onChange={set('stage')}
        />
        <SelectField
          id="state"
          label="State"
          empty="Any state"
          value={filter.state ?? ''}
          options={STATES.map((value) => ({ value, label: value }))}
          onChange={set('state')}
        />
        <SelectField
          id="due"
          label="Due"
          empty="Any date"
          options={DUE_OPTIONS}
          value={filter.due ?? ''}
          onChange={set('due')}
        />
        <SelectField
          id="assigned"
          label="Person"
          empty="Anybody"
          options={options}
          value={filter.assigned ?? ''}
          onChange={set('assigned')}
        />
      </form>
      {applied.length > 0 && (
        <ul className="applied" aria-label="Filters that apply">
          {applied.map((name) => (
            <li key={name}>
              <button type="button" onClick={() => set(name)('')}>
                {filterWords(name, filter[name] ?? '', person)}
                <span aria-hidden="true">&nbsp;×</span>
                <span className="visually-hidden">, remove this filter</span>
              </button>
            </li>
          ))}
          <li>
            <Link to="/jobs">Remove all filters</Link>
          </li>
        </ul>
      )}
    </div>
  );
}

/** A change of filter starts again at the first page; empty values leave the address. */
function without(filter: Filter): Filter {
  const { page: _page, ...rest } = filter;
  return Object.fromEntries(Object.entries(rest).filter(([, value]) => value)) as Filter;
}
