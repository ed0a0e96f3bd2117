// Pictures of every page, wide and narrow, light and dark, into .shots/: `npm run shots`, or
// `npm run shots -- -t jobs` for some. Not a check: people look at them.

import { mkdirSync } from 'node:fs';
import { expect, test } from '@jest/globals';
import type { Page } from 'playwright-core';
import { journey, settled, withOffice, type Who } from './browser.js';
import { PAGES } from './routes.js';

const SIZES = { wide: { width: 1280, height: 900 }, narrow: { width: 320, height: 700 } } as const;
const LOOKS = ['light', 'dark'] as const;

journey('pictures', () => {
  const office = withOffice();
  const tabs = new Map<string, Page>();
  const tabOf = async (who: Who | null, size: keyof typeof SIZES, look: (typeof LOOKS)[number]) => {
    const key = `${who?.id} ${size} ${look}`;
    const options = { viewport: SIZES[size], colorScheme: look };
    const tab = tabs.get(key) ?? (await (who ? office.as(who, options) : office.stranger(options)));
    tabs.set(key, tab);
    return tab;
  };

  test.each(PAGES.map((each) => [each.name, each] as const))(
    '%s',
    async (name, { path, who }) => {
      mkdirSync('.shots', { recursive: true });
      for (const size of Object.keys(SIZES) as (keyof typeof SIZES)[]) {
        for (const look of LOOKS) {
          const tab = await tabOf(who, size, look);
          await tab.goto(path);
          await settled(tab);
          await tab.screenshot({ path: `.shots/${name}-${size}-${look}.png`, fullPage: true });
        }
      }
      expect(tabs.size).toBeGreaterThan(0);
    },
    60_000,
  );
});
