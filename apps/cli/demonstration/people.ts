// The demonstration's company and its people, all invented.

import type { Role } from '#jobs/contract';

export const DEMONSTRATION = {
  company: 'demonstration',
  name: 'Example Metal Roofing (demonstration)',
  address: '1 Seam Street, Exampleville (invented)',
  phone: '555 0100',
} as const;

interface DemonstrationPerson {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly roles: readonly Role[];
}

const person = (n: number, name: string, ...roles: readonly Role[]): DemonstrationPerson => ({
  id: `00000000-0000-7000-8000-00000000000${n}`,
  name,
  email: `${name.toLowerCase()}@metal-roofing.example`,
  roles,
});

export const OFFICE = person(1, 'Olive', 'office');
export const MANAGER = person(2, 'Pascal', 'project-manager');
export const CREW = person(3, 'Cora', 'crew-lead');
export const ENGINEER = person(4, 'Edda', 'engineer');
export const REVIEWER = person(5, 'Wanda', 'warranty-reviewer');
export const STANDARDS = person(6, 'Stellan', 'standards-manager');
export const ADMINISTRATOR = person(7, 'Adam', 'administrator');

export const PEOPLE = [
  OFFICE,
  MANAGER,
  CREW,
  ENGINEER,
  REVIEWER,
  STANDARDS,
  ADMINISTRATOR,
] as const;
