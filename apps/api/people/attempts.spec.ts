// Ten failures make an e-mail wait, whichever instance of the service they were made at.

import { expect, test } from '@jest/globals';
import { withService, settingsFor } from '../../../tests/service.js';
import { FrontDoor } from '../data/front-door.js';
import { Problem } from '../problems.js';
import { Attempts } from './attempts.js';

const running = withService();

test('failures at two instances add up; success at one forgets them at both', async () => {
  const doors = [0, 1].map(() => new FrontDoor(settingsFor(running.database.serviceUrl)));
  const [here, there] = doors.map((door) => new Attempts(door)) as [Attempts, Attempts];
  for (let i = 0; i < 5; i++) await Promise.all([here.failed('e'), there.failed('e')]);
  await expect(here.check('other', 'e')).rejects.toThrow(Problem);
  await expect(there.check('e')).rejects.toMatchObject({
    kind: 'too-many-attempts',
    details: { retryAfter: 900 },
  });
  await here.check('other');
  await there.succeeded('e');
  await here.check('e');
  await Promise.all(doors.map((door) => door.onApplicationShutdown()));
}, 60_000);
