/**
 * Script addresses go through one policy that lets only our own files pass, so that the page can forbid every other.
 * Where the browser does not know such policies, the plain address is used.
 */
type Factory = { createPolicy: (name: string, rules: { createScriptURL: (url: string) => string }) => { createScriptURL: (url: string) => string } };

const own = (url: string): string => {
  const address = new URL(url, location.href);
  if (address.origin !== location.origin) throw new Error('only this program’s own files may be run');
  return address.href;
};

const policy = (globalThis as { trustedTypes?: Factory }).trustedTypes?.createPolicy('seamward', { createScriptURL: own });

/** The address of one of our own scripts, marked as such. */
export const ownScript = (url: string): string => (policy ? policy.createScriptURL(url) : own(url));
