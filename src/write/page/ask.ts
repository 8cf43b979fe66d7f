/** Asking the server. The secret stands behind the `#` of the address, and goes along in a header only. */

/** The server said no, in words. */
export class Refused extends Error {
  readonly status: number;
  constructor(status: number, words: string) {
    super(words);
    this.status = status;
  }
}

/** @throws Refused; a TypeError when the server cannot be reached */
export async function ask<T>(path: string, init: RequestInit = {}): Promise<T> {
  const response = await fetch(`/api/${path}`, {
    ...init,
    headers: { ...init.headers, Authorization: `Bearer ${location.hash.slice(1)}` },
  });
  if (response.status === 204) return undefined as T;
  const isJson = response.headers.get('content-type')?.startsWith('application/json') === true;
  if (!response.ok && !(response.status === 409 && isJson)) throw new Refused(response.status, (await response.text()).trim());
  return (await response.json()) as T;
}

export function send<T>(method: string, path: string, value: unknown): Promise<T> {
  return ask<T>(path, { method, body: JSON.stringify(value), headers: { 'Content-Type': 'application/json' } });
}

/** A picture cannot be asked for by its address alone, since the secret must go along. */
export async function askPicture(path: string): Promise<string> {
  const response = await fetch(`/api/${path}`, { headers: { Authorization: `Bearer ${location.hash.slice(1)}` } });
  if (!response.ok) throw new Refused(response.status, await response.text());
  return URL.createObjectURL(await response.blob());
}
