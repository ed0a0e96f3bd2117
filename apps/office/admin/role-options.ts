// The roles a person may have, to choose from.

import { label, ROLES } from '#jobs/contract';
import { capital } from '../parts/words.js';

export const ROLE_OPTIONS = ROLES.map((value) => ({ value, label: capital(label(value)) }));
