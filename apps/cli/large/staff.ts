// The people of the large demonstration over nine years: who came, who left. All invented.

import type { Role } from '#jobs/contract';

export const LARGE = {
  company: 'demonstration-large',
  name: 'Nine Years of Example Roofing (demonstration)',
} as const;

export type Post = 'office' | 'manager' | 'crew' | 'engineer' | 'reviewer' | 'standards';

export interface Colleague {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly post: Post;
  readonly roles: readonly Role[];
  readonly from: string;
  /** Their last day; nobody knows it of those who are still there. */
  readonly to: string;
}

const ROLES: Readonly<Record<Post, readonly Role[]>> = {
  office: ['office'],
  manager: ['project-manager'],
  crew: ['crew-lead'],
  engineer: ['engineer'],
  reviewer: ['warranty-reviewer'],
  standards: ['standards-manager', 'administrator'],
};
const STILL = '9999-12-31';

const colleague = (
  n: number,
  post: Post,
  name: string,
  from: string,
  to: string = STILL,
): Colleague => ({
  id: `00000000-0000-7000-8000-0000000090${String(n).padStart(2, '0')}`,
  name,
  post,
  from,
  to,
  email: `${name.toLowerCase()}@nine-years.example`,
  roles: ROLES[post],
});

/** Every post is held by somebody on every day. */
export const STAFF: readonly Colleague[] = [
  colleague(1, 'office', 'Orla', '2017-01-01', '2021-03-31'),
  colleague(2, 'office', 'Oskar', '2019-05-01', '2024-08-31'),
  colleague(3, 'office', 'Opal', '2021-04-01'),
  colleague(4, 'office', 'Otto', '2024-06-01'),
  colleague(11, 'manager', 'Petra', '2017-01-01', '2022-09-30'),
  colleague(12, 'manager', 'Paul', '2020-02-01'),
  colleague(21, 'crew', 'Carl', '2017-01-01', '2020-10-31'),
  colleague(22, 'crew', 'Clea', '2018-06-01'),
  colleague(23, 'crew', 'Cosmo', '2020-11-01', '2025-12-31'),
  colleague(31, 'engineer', 'Emil', '2017-01-01', '2022-06-30'),
  colleague(32, 'engineer', 'Elin', '2019-09-01'),
  colleague(33, 'engineer', 'Ezra', '2023-01-01'),
  colleague(41, 'reviewer', 'Wim', '2017-01-01', '2023-12-31'),
  // The second administrator: erasing a person takes two.
  {
    ...colleague(42, 'reviewer', 'Wendy', '2023-06-01'),
    roles: ['warranty-reviewer', 'administrator'],
  },
  colleague(51, 'standards', 'Sten', '2017-01-01'),
];

export const isThere = ({ from, to }: Colleague, day: string): boolean => from <= day && day <= to;

/** Somebody of the post on that day, the same one for the same `turn`. */
export function onDuty(post: Post, day: string, turn: number): Colleague {
  const there = STAFF.filter((each) => each.post === post && isThere(each, day));
  const one = there[turn % there.length];
  if (!one) throw new Error(`nobody is ${post} on ${day}`);
  return one;
}
