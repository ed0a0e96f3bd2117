// The integer solver as the service keeps it: loaded when the first take-off needs it, once. Where it
// cannot be loaded the own search stands, and a trim that it could not prove says so.

import { Injectable } from '@nestjs/common';
import type { SolveStock } from '#engineering';
import { Log } from '../http/log.js';

@Injectable()
export class Solver {
  private loading: Promise<SolveStock | undefined> | undefined;

  constructor(private readonly log: Log) {}

  cutStock(): Promise<SolveStock | undefined> {
    return (this.loading ??= this.load());
  }

  private async load(): Promise<SolveStock | undefined> {
    try {
      const { loadCuttingStock } = await import('./cutting-stock.js');
      return await loadCuttingStock();
    } catch (error) {
      this.log.error(
        { err: error },
        'the integer solver cannot be loaded; trims are cut by the own search',
      );
      return undefined;
    }
  }
}
