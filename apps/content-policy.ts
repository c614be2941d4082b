/**
 * What the page may load and run: nothing but its own, and no text made into program. Written once: the build puts it into the
 * page for hosts that set no headers, and our own server sends it as a header.
 */
export const CONTENT_POLICY: readonly string[] = [
  "default-src 'self'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' blob: data:",
  "worker-src 'self'",
  "connect-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
  "require-trusted-types-for 'script'",
  'trusted-types seamward',
];
