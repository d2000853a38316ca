/** Whether a `Host` header names this very address, so that a name pointed here from elsewhere is not served. */
export function isOwnHost(header: string | undefined, address: string, port: number): boolean {
  return header === `${address}:${port}`;
}

/**
 * Whether a request comes from a page of this address: its `Origin` is ours, or it has none and only reads.
 * Browsers name the origin with every request that may change something (Fetch standard, “append a request
 * `Origin` header”).
 */
export function isFromOwnPage(request: {
  readonly method: string | undefined;
  readonly origin: string | undefined;
  readonly ownOrigin: string;
}): boolean {
  if (request.origin !== undefined) return request.origin === request.ownOrigin;
  return request.method === "GET" || request.method === "HEAD";
}
