/** Who may ask: only the page itself, from the address that was printed, with the secret of this run. */
import { randomBytes, timingSafeEqual } from 'node:crypto';
import type { MiddlewareHandler } from 'hono';

/** 128 bits: cannot be guessed, and still makes a QR code that a phone reads from a terminal. */
export function newSecret(): string {
  return randomBytes(16).toString('base64url');
}

const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "font-src 'self'",
  "img-src 'self' blob:",
  "connect-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

/** Every answer: nothing inline, nothing from elsewhere, in no frame, and kept by nobody. */
export const withHeaders: MiddlewareHandler = async (context, next) => {
  await next();
  const { headers } = context.res;
  headers.set('Content-Security-Policy', POLICY);
  headers.set('X-Content-Type-Options', 'nosniff');
  headers.set('Referrer-Policy', 'no-referrer');
  headers.set('Cross-Origin-Resource-Policy', 'same-origin');
  headers.set('Cross-Origin-Opener-Policy', 'same-origin');
  headers.set('Cache-Control', 'no-store');
};

/**
 * A request that names another host than those that are served was led here by a name that is not ours, and one that
 * another page makes says so by its origin. Both are refused before anything is looked at.
 *
 * @param hosts `name:port` of every address that the page may be opened at
 */
export function ofThisPage(hosts: () => readonly string[]): MiddlewareHandler {
  return async (context, next) => {
    const host = context.req.header('host') ?? '';
    const origin = context.req.header('origin');
    const site = context.req.header('sec-fetch-site');
    const reads = ['GET', 'HEAD'].includes(context.req.method);
    const foreign = origin === undefined ? !reads : origin !== `http://${host}`;
    const byOther = site !== undefined && site !== 'same-origin' && !(site === 'none' && reads);
    if (!hosts().includes(host) || foreign || byOther) return context.text(NOT_HERE, 403);
    return next();
  };
}

const NOT_HERE =
  'This is not the address that `asfound write` printed, so nothing is answered here. ' +
  'Open the page anew at that address: it stands where the command was started. A phone needs `asfound write --phone`.\n';

/** The secret comes with each request and stands in none of the addresses asked for, so that no log can hold it. */
export function withSecret(secret: string): MiddlewareHandler {
  const expected = Buffer.from(`Bearer ${secret}`);
  return async (context, next) => {
    const given = Buffer.from(context.req.header('authorization') ?? '');
    if (given.length === expected.length && timingSafeEqual(given, expected)) return next();
    return context.text('Open the address that `asfound write` printed: it is a new one at each start.\n', 401);
  };
}
