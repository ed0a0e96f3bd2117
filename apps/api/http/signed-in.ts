// Who is asking: the person of a session, as a parameter of a handler.

import { createParamDecorator, type ExecutionContext } from '@nestjs/common';
import type { Role } from '#jobs/contract';

/** Who acts, for which company. */
export interface Acting {
  readonly company: { readonly id: string; readonly name: string };
  readonly person: { readonly id: string; readonly name: string; readonly email: string };
  readonly roles: readonly Role[];
}

export interface SignedIn extends Acting {
  readonly csrf: string;
  readonly expiresAt: Date;
  readonly token: string;
}

export const Asking = createParamDecorator((_: unknown, context: ExecutionContext): SignedIn => {
  const { signedIn } = context.switchToHttp().getRequest<{ signedIn?: SignedIn }>();
  if (!signedIn) throw new Error('a route for anyone asked who is signed in');
  return signedIn;
});
