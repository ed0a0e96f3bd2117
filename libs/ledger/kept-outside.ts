// The last checkpoint signed of a log, in a file outside the database, where several processes may sign
// at once. Each first puts its own beside that file under its size, then copies the largest one there is
// into it until none larger has come: whoever writes last has seen the largest. No lock is left behind.

import { readdirSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { writeDurably } from './key-ring.js';

export interface KeptOutside {
  /** The largest first; several only while somebody writes, or where one is not a checkpoint. */
  read(log: string): string[];
  keep(log: string, size: number, note: string): void;
}

export function keptOutside(folder: string): KeptOutside {
  const nameOf = (log: string) => `${encodeURIComponent(log)}.checkpoint`;
  const inFolder = (name: string) => path.join(folder, name);

  /** Sizes that stand beside the file. */
  const sizes = (log: string): number[] => {
    const own = `${nameOf(log)}.`;
    return readdirSync(folder)
      .filter((name) => name.startsWith(own) && /^\d+$/.test(name.slice(own.length)))
      .map((name) => Number(name.slice(own.length)))
      .sort((a, b) => b - a);
  };

  const read = (log: string): string[] => {
    for (;;) {
      const beside = sizes(log).map((size) => `${nameOf(log)}.${size}`);
      const found = beside.map((name) => textOf(inFolder(name)));
      // Removed since it was listed: there is a larger one.
      if (found.includes(undefined)) continue;
      const all = [...found, textOf(inFolder(nameOf(log)))].filter((each) => each !== undefined);
      return [...new Set(all)];
    }
  };

  const keep = (log: string, size: number, note: string): void => {
    writeDurably(inFolder(`${nameOf(log)}.${size}`), note);
    for (let copied = -1; ;) {
      const [largest, ...smaller] = sizes(log);
      if (largest === undefined)
        throw new Error(`The folder ${folder} does not keep what is put there.`);
      if (largest > copied) {
        const text = textOf(inFolder(`${nameOf(log)}.${largest}`));
        if (text === undefined) continue;
        writeDurably(inFolder(nameOf(log)), text);
        copied = largest;
      } else {
        for (const each of smaller) rmSync(inFolder(`${nameOf(log)}.${each}`), { force: true });
        return;
      }
    }
  };
  return { read, keep };
}

function textOf(file: string): string | undefined {
  try {
    return readFileSync(file, 'utf8');
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
    throw error;
  }
}
