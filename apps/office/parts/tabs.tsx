// Tabs, for parallel views only: arrow keys move, Tab leaves the list.

import type { ReactNode } from 'react';
import { Tab, TabList, TabPanel, Tabs } from 'react-aria-components';

export function TabSet({
  label,
  tabs,
}: {
  readonly label: string;
  readonly tabs: readonly { readonly name: string; readonly content: ReactNode }[];
}) {
  return (
    <Tabs className="tabs stack">
      <TabList aria-label={label}>
        {tabs.map(({ name }) => (
          <Tab key={name} id={name}>
            {name}
          </Tab>
        ))}
      </TabList>
      {tabs.map(({ name, content }) => (
        <TabPanel key={name} id={name}>
          {content}
        </TabPanel>
      ))}
    </Tabs>
  );
}
