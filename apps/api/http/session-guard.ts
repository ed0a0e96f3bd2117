// Nobody passes without a session, the CSRF token on a changing request, and a role of the route.

import { Injectable, type CanActivate, type ExecutionContext } from '@nestjs/common';
import type { Request } from 'express';
import { Ledgers } from '../data/ledgers.js';
import { Problem } from '../problems.js';
import { Sessions } from '../people/sessions.js';
import { routeWords } from './route.js';
import type { SignedIn } from './signed-in.js';

export const COOKIE = 'gauge_session';
const SAFE = new Set(['GET', 'HEAD']);

@Injectable()
export class SessionGuard implements CanActivate {
  constructor(
    private readonly sessions: Sessions,
    private readonly ledgers: Ledgers,
  ) {}

  async canActivate(context: ExecutionContext): Promise<boolean> {
    const words = routeWords(context.getHandler());
    if (!words) throw new Error(`${context.getHandler().name} says not who may use it`);
    if (words.who === 'anyone') return true;
    const request = context.switchToHttp().getRequest<Request & { signedIn?: SignedIn }>();
    const token = cookie(request);
    const signedIn = token === undefined ? undefined : await this.sessions.find(token);
    if (!signedIn) throw new Problem('not-signed-in');
    if (!SAFE.has(request.method) && request.get('x-csrf-token') !== signedIn.csrf) {
      throw new Problem('forbidden', 'The header X-CSRF-Token does not belong to this session.');
    }
    const { who } = words;
    if (who !== 'signed-in' && !signedIn.roles.some((role) => who.includes(role))) {
      throw new Problem('forbidden', `This is for: ${who.join(', ')}.`);
    }
    request.signedIn = signedIn;
    this.ledgers.lists.follow(signedIn.company.id);
    return true;
  }
}

export function cookie(request: Request): string | undefined {
  const found = /(?:^|;\s*)gauge_session=([A-Za-z0-9_-]{43})(?:;|$)/.exec(
    request.get('cookie') ?? '',
  );
  return found?.[1];
}
