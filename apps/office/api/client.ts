// One way to speak to the service: a typed answer, or a problem that says what is wrong.

import type { Problem, Session } from './answers.js';
import { takeBegun } from './begun.js';

/** The service answered with a problem, or no answer came (status 0). */
export class ServiceProblem extends Error {
  constructor(readonly problem: Problem) {
    super(problem.detail ?? problem.title);
  }
}

export interface Answer<T> {
  readonly value: T;
  /** The version in the ETag; null where there is none. */
  readonly version: number | null;
}

export interface Request {
  readonly method?: 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE';
  readonly body?: unknown;
  readonly raw?: { readonly bytes: Blob | string; readonly type: string; readonly name?: string };
  readonly version?: number;
  readonly key?: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly signal?: AbortSignal;
}

let csrf = '';
const endings = new Set<() => void>();

export function keepToken(session: Session): void {
  csrf = session.csrf;
}

/** Calls back when the service says that nobody is signed in any more. */
export function onSessionEnd(listener: () => void): () => void {
  endings.add(listener);
  return () => endings.delete(listener);
}

export const NO_ANSWER: Problem = {
  status: 0,
  title: 'No answer from the service',
  detail:
    'The connection was lost before an answer came. What you typed is still here. ' +
    'Save again when you are connected: it is recorded once, even if the first try arrived.',
};

/** Pages by private link: a wrong code there ends nobody's session. */
const WITHOUT_SESSION = /^\/(session|packet|customer)\b/;

/** @throws ServiceProblem for anything but a 2xx answer. */
export async function ask<T>(path: string, request: Request = {}): Promise<Answer<T>> {
  const response = await send(path, request);
  if (response.status === 401 && !WITHOUT_SESSION.test(path)) {
    for (const listener of endings) listener();
  }
  if (!response.ok) throw new ServiceProblem(await problemOf(response));
  const value = response.status === 204 ? undefined : await response.json();
  return { value: value as T, version: versionOf(response.headers.get('etag')) };
}

/** A paper as bytes. @throws ServiceProblem */
export async function askBytes(path: string, body: unknown): Promise<Blob> {
  const response = await send(path, { method: 'POST', body });
  if (!response.ok) throw new ServiceProblem(await problemOf(response));
  return response.blob();
}

async function send(path: string, request: Request): Promise<Response> {
  const { method = 'GET', body, raw, version, key, signal } = request;
  const headers = new Headers({ accept: 'application/json', ...request.headers });
  if (body !== undefined) headers.set('content-type', 'application/json');
  if (raw !== undefined) headers.set('content-type', raw.type);
  if (raw?.name !== undefined) headers.set('x-file-name', encodeURIComponent(raw.name));
  if (method !== 'GET') headers.set('x-csrf-token', csrf);
  if (version !== undefined) headers.set('if-match', `"${version}"`);
  if (key !== undefined) headers.set('idempotency-key', key);
  try {
    const begun = method === 'GET' ? takeBegun(path) : undefined;
    if (begun !== undefined) return await begun;
    return await fetch(`/api${path}`, {
      method,
      headers,
      credentials: 'same-origin',
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
      ...(raw === undefined ? {} : { body: raw.bytes }),
      ...(signal === undefined ? {} : { signal }),
    });
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') throw error;
    throw new ServiceProblem(NO_ANSWER);
  }
}

export async function problemOf(response: Response): Promise<Problem> {
  const fallback = { status: response.status, title: `The service answered ${response.status}` };
  try {
    return { ...fallback, ...((await response.json()) as Problem), status: response.status };
  } catch {
    return fallback;
  }
}

const versionOf = (etag: string | null): number | null => {
  const found = /^(?:W\/)?"(\d+)"$/.exec(etag ?? '');
  return found?.[1] === undefined ? null : Number(found[1]);
};

export const problemFrom = (error: unknown): Problem =>
  error instanceof ServiceProblem
    ? error.problem
    : { status: 0, title: 'Something went wrong on this page', detail: String(error) };
