// The job list's filter as the address and the service have it.

export const FILTERS = ['find', 'stage', 'state', 'assigned', 'due'] as const;
export type FilterName = (typeof FILTERS)[number];
export type Filter = Partial<Record<FilterName | 'sort' | 'page', string>>;

/** The service's query for a filter; due first unless another order is asked. */
export function queryOf(filter: Filter, withPage = true): string {
  const query = new URLSearchParams();
  for (const name of FILTERS) {
    const value = filter[name];
    if (value) query.set(name, value);
  }
  query.set('sort', filter.sort ?? 'due');
  if (withPage && filter.page && filter.page !== '1') query.set('page', filter.page);
  return query.toString();
}
