/**
 * Script addresses go through one policy that lets only our own files pass, so that the page can forbid every other.
 * Where the browser does not know such policies, the plain address is used.
 */
type Rules = { readonly createScriptURL: (url: string) => string; readonly createHTML: (markup: string) => string };
type Factory = { createPolicy: (name: string, rules: Rules) => Rules };

const own = (url: string): string => {
  const address = new URL(url, location.href);
  if (address.origin !== location.origin) throw new Error('only this program’s own files may be run');
  return address.href;
};

const policy = (globalThis as { trustedTypes?: Factory }).trustedTypes?.createPolicy('seamward', { createScriptURL: own, createHTML: (markup) => markup });

/** The address of one of our own scripts, marked as such. */
export const ownScript = (url: string): string => (policy ? policy.createScriptURL(url) : own(url));

/**
 * Markup that this program wrote itself, every text in it escaped: sheets of paper. Never what a person or a file gave.
 * It is only ever parsed apart from the page; scripts in it would not run there.
 */
export const ownMarkup = (markup: string): string => (policy ? policy.createHTML(markup) : markup);
