// A job's stream in the log, and its entries as the job knows them.

import type { PastEvent } from '#jobs';
import type { Recorded } from '#ledger';

export const jobStream = (id: string): string => `job/${id}`;
export const pastEvent = (event: Recorded): PastEvent => event as unknown as PastEvent;
