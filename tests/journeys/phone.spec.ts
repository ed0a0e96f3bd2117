// The crew lead's page where there is no signal at all: the line is really cut, the page reloaded, what
// was typed is still there; with the line back it is sent, once.

import { createServer, connect, type Server, type Socket } from 'node:net';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, expect, test } from '@jest/globals';
import { BARN } from '../../apps/cli/demonstration/barn.js';
import { CREW, OFFICE } from '../../apps/cli/demonstration/people.js';
import { axe, journey, settled, withOffice } from './browser.js';

/** A line to the service that can be cut and joined again. */
class Line {
  private server: Server | undefined;
  private readonly open = new Set<Socket>();
  port = 0;

  async join(to: string): Promise<void> {
    const { hostname, port } = new URL(to);
    this.server = createServer((socket) => {
      const far = connect(Number(port), hostname);
      for (const each of [socket, far]) {
        this.open.add(each);
        each.on('error', () => undefined);
        each.on('close', () => {
          this.open.delete(each);
          socket.destroy();
          far.destroy();
        });
      }
      socket.pipe(far).pipe(socket);
    });
    await new Promise<void>((resolve) => {
      this.server?.listen(this.port, '127.0.0.1', resolve);
    });
    this.port = (this.server.address() as AddressInfo).port;
  }

  async cut(): Promise<void> {
    const closed = new Promise((resolve) => this.server?.close(resolve));
    for (const each of this.open) each.destroy();
    await closed;
  }
}

journey('the phone page without a signal', () => {
  const office = withOffice();
  const line = new Line();
  beforeAll(() => line.join(office.address));
  afterAll(() => line.cut());

  test('a reload without a line keeps what was typed; back on the line it is sent once; signing out forgets', async () => {
    const page = await office.as(CREW, { viewport: { width: 390, height: 800 } });
    const here = `http://127.0.0.1:${line.port}/phone/${BARN.id}/roof`;
    await page.goto(here);
    await settled(page);
    await page.getByText('This page opens without a signal too.').waitFor();
    await line.cut();
    await page.getByLabel('What was found').first().fill('Rafter tail split at the east eave.');
    await page.reload();
    await settled(page);
    await page.getByRole('heading', { level: 1, name: 'Barn roof' }).waitFor();
    expect(await page.getByLabel('What was found').first().inputValue()).toBe(
      'Rafter tail split at the east eave.',
    );
    expect(await axe(page)).toEqual([]);
    await page.getByRole('button', { name: 'Record the stop' }).click();
    await page.getByText('1 not sent yet.').waitFor();
    await page.reload();
    await settled(page);
    await page.getByText('1 not sent yet.').waitFor();
    await line.join(office.address);
    await page.getByText('Everything typed here has been sent.').waitFor({ timeout: 60_000 });
    const reader = await office.as(OFFICE);
    await reader.goto(`/jobs/${BARN.id}`);
    await settled(reader);
    expect(await reader.locator('.timeline').getByText('Rafter tail split').count()).toBe(1);
    await page.getByRole('button', { name: 'Cora' }).click();
    await page.getByRole('menuitem', { name: 'Sign out' }).click();
    await page.getByRole('heading', { name: 'Sign in' }).waitFor();
    const left = `caches.open('phone-read').then((cache) => cache.keys()).then((keys) => keys.length)`;
    expect(await page.evaluate(left)).toBe(0);
  }, 120_000);
});
