// The feed of events, for another program of the company: by a token that is good for nothing else, or
// by the session of somebody who may read every entry.

import { Body, Controller, Param, Query, Req, Res } from '@nestjs/common';
import type { Request, Response } from 'express';
import { z } from 'zod';
import { Name } from '#jobs/contract';
import { canonical } from '#ledger';
import { Ledgers } from '../data/ledgers.js';
import { Route } from '../http/route.js';
import { cookie } from '../http/session-guard.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { tokenDigest } from '../people/passwords.js';
import { Sessions } from '../people/sessions.js';
import { Problem } from '../problems.js';
import { Feed } from './feed.js';
import { FeedTokens } from './feed-tokens.js';
import { CLOUD_EVENTS, cloudEvent, CloudEventsSchema } from './feed-words.js';
import { LogDoor } from './log-door.js';
import { readerOf, Readings, type Reader } from './readings.js';

const READERS = ['administrator', 'warranty-reviewer'] as const;
const LONGEST_WAIT_S = 30;
const Page = z.strictObject({
  after: z.coerce.number().int().min(0).max(Number.MAX_SAFE_INTEGER).default(0),
  limit: z.coerce.number().int().min(1).max(1000).default(100),
  wait: z.coerce.number().min(0).max(LONGEST_WAIT_S).default(0).describe('seconds'),
});
const Position = z.coerce.number().int().min(1).max(Number.MAX_SAFE_INTEGER);
const NewToken = z.strictObject({ name: Name });
const TokenId = z.uuid('must be the id of a token');
const Listed = z.object({
  id: z.string(),
  name: z.string(),
  made_by: z.string(),
  made_at: z.string(),
  ended_at: z.string().nullable(),
});

@Controller('api/log')
export class FeedController {
  constructor(
    private readonly door: LogDoor,
    private readonly sessions: Sessions,
    private readonly feed: Feed,
    private readonly tokens: FeedTokens,
    private readonly readings: Readings,
    private readonly ledgers: Ledgers,
  ) {}

  @Route('GET', 'events', {
    says:
      'Entries after a position as CloudEvents, with ids only. Waits up to "wait" seconds for the ' +
      'first one. Ask on with the header Next-After. For an administrator, a warranty reviewer, or ' +
      'with "Authorization: Bearer" and a token of the feed',
    who: 'anyone',
    gives: CloudEventsSchema,
    media: CLOUD_EVENTS,
    headers: { Authorization: '"Bearer" and a token of the feed, instead of a session' },
    fails: ['not-signed-in', 'forbidden'],
  })
  async events(
    @Req() request: Request,
    @Query({ schema: Page }) { after, limit, wait }: z.output<typeof Page>,
    @Res() response: Response,
  ): Promise<void> {
    const reader = await this.reader(request);
    await this.readings.read(reader, 'event-feed', ['']);
    const gone = new AbortController();
    response.once('close', () => gone.abort());
    const page = { after, limit, waitMs: wait * 1000 };
    const { events, next } = await this.feed.read(reader.company, page, gone.signal);
    const more = new URLSearchParams({ after: String(next), limit: String(limit) }).toString();
    response.setHeader('Content-Type', `${CLOUD_EVENTS}; charset=utf-8`);
    response.setHeader('Next-After', String(next));
    response.setHeader('Link', `</api/log/events?${more}>; rel="next"`);
    response.end(JSON.stringify(events.map(cloudEvent)));
  }

  @Route('GET', 'events/:pos', {
    says: 'An entry as it is kept: its canonical JSON is what is hashed',
    who: READERS,
    gives: z.record(z.string(), z.unknown()),
  })
  async event(
    @Asking() asking: SignedIn,
    @Param('pos', { schema: Position }) pos: number,
    @Res() response: Response,
  ): Promise<void> {
    const [event] = await this.ledgers.ledger.readAll(asking.company.id, {
      after: pos - 1,
      limit: 1,
    });
    if (!event) throw new Problem('not-found', 'There is no such entry yet.');
    await this.readings.exported(readerOf(asking), 'event', String(pos));
    response.setHeader('Content-Type', 'application/json; charset=utf-8');
    response.end(canonical(event));
  }

  @Route('GET', 'feed-tokens', {
    says: 'Tokens of the feed, those that ended too',
    who: ['administrator'],
    gives: z.object({ tokens: z.array(Listed) }),
  })
  async list(@Asking() { company }: SignedIn) {
    const tokens = await this.tokens.list(company.id);
    return {
      tokens: tokens.map(({ id, name, madeBy, madeAt, endedAt }) => ({
        id,
        name,
        made_by: madeBy,
        made_at: madeAt.toISOString(),
        ended_at: endedAt?.toISOString() ?? null,
      })),
    };
  }

  @Route('POST', 'feed-tokens', {
    says: 'Make a token that reads the feed and nothing else; it is shown this once',
    who: ['administrator'],
    answers: 'created',
    gives: z.object({ id: z.string(), token: z.string() }),
  })
  make(
    @Asking() { company, person }: SignedIn,
    @Body({ schema: NewToken }) { name }: z.output<typeof NewToken>,
  ) {
    return this.tokens.make(company.id, person.id, name);
  }

  @Route('DELETE', 'feed-tokens/:id', {
    says: 'A token opens nothing from now on',
    who: ['administrator'],
    answers: 'nothing',
  })
  async end(@Asking() { company }: SignedIn, @Param('id', { schema: TokenId }) id: string) {
    await this.tokens.end(company.id, id);
  }

  /** @throws Problem not-signed-in or forbidden */
  private async reader(request: Request): Promise<Reader> {
    const [, bearer] =
      /^Bearer ([A-Za-z0-9_-]{43})$/.exec(request.get('authorization') ?? '') ?? [];
    if (bearer !== undefined) {
      const token = await this.door.feed(tokenDigest(bearer));
      if (!token) throw new Problem('not-signed-in', 'This token opens nothing.');
      return { company: token.company, id: token.id, kind: 'feed' };
    }
    const given = cookie(request);
    const signedIn = given === undefined ? undefined : await this.sessions.find(given);
    if (!signedIn) throw new Problem('not-signed-in');
    if (!signedIn.roles.some((role) => (READERS as readonly string[]).includes(role)))
      throw new Problem('forbidden', `This is for: ${READERS.join(', ')}.`);
    return readerOf(signedIn);
  }
}
