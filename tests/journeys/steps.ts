// A story in steps: after one that fails the rest say so and do not wait, and what the page shows is told.

import { test } from '@jest/globals';
import type { Page } from 'playwright-core';

export type Step = (name: string, act: () => Promise<void>) => void;

/** `shown` is the page that the story is told on. */
export function steps(shown: () => Page): Step {
  let open = '';
  return (name, act) =>
    test(
      name,
      async () => {
        if (open) throw new Error(`the story stopped at: ${open}`);
        open = name;
        await act().catch(async (error: unknown) => {
          const words = await shown()
            .locator('main')
            .innerText()
            .catch(() => '');
          throw new Error(`${String(error)}\nThe page shows:\n${words.slice(0, 3000)}`, {
            cause: error,
          });
        });
        open = '';
      },
      90_000,
    );
}
