// One signed-in person over real HTTP, with the time that each answer took.

export interface Timed<T> {
  readonly ms: number;
  readonly status: number;
  readonly etag: string | null;
  readonly body: T;
}

export interface BenchClient {
  readonly id: string;
  readonly cookie: string;
  /** @throws Error for anything but a 2xx answer */
  get<T>(where: string): Promise<Timed<T>>;
  post<T>(
    where: string,
    body: unknown,
    headers?: Readonly<Record<string, string>>,
  ): Promise<Timed<T>>;
}

export async function signIn(address: string, token: string): Promise<BenchClient> {
  const response = await fetch(`${address}/api/session/link`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ token }),
  });
  if (!response.ok) throw new Error(`signing in failed: ${await response.text()}`);
  const { csrf, person } = (await response.json()) as { csrf: string; person: { id: string } };
  const cookie = (response.headers.get('set-cookie') ?? '').split(';')[0] ?? '';
  const send = async <T>(method: string, where: string, init: RequestInit): Promise<Timed<T>> => {
    const start = performance.now();
    const answer = await fetch(`${address}/api${where}`, { method, ...init });
    const text = await answer.text();
    const ms = performance.now() - start;
    if (!answer.ok) throw new Error(`${method} ${where} answered ${answer.status}: ${text}`);
    return {
      ms,
      status: answer.status,
      etag: answer.headers.get('etag'),
      body: JSON.parse(text) as T,
    };
  };
  return {
    id: person.id,
    cookie,
    get: (where) => send('GET', where, { headers: { cookie } }),
    post: (where, body, headers = {}) =>
      send('POST', where, {
        headers: { cookie, 'x-csrf-token': csrf, 'content-type': 'application/json', ...headers },
        body: JSON.stringify(body),
      }),
  };
}
