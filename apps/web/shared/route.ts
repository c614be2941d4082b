import { useSyncExternalStore } from 'react';

/** Where the page is: `#/rig/0190…/station/roof-vent-1?side=inside` gives parts and query. */
export type Route = { readonly parts: readonly string[]; readonly query: Readonly<Record<string, string>>; readonly text: string };

export const parseRoute = (hash: string): Route => {
  const text = hash.replace(/^#\/?/, '');
  const [path = '', search = ''] = text.split('?', 2);
  const parts = path
    .split('/')
    .filter((p) => p !== '')
    .map(decodePart);
  return { parts, query: Object.fromEntries(new URLSearchParams(search)), text };
};

const decodePart = (part: string): string => {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
};

/** An address within the page: `href('rig', id, 'plan')` is `#/rig/<id>/plan`. */
export const href = (...parts: readonly (string | number)[]): string => `#/${parts.map((p) => encodeURIComponent(String(p))).join('/')}`;

export const withQuery = (address: string, query: Readonly<Record<string, string>>): string => {
  const text = new URLSearchParams(query).toString();
  return text === '' ? address : `${address}?${text}`;
};

export const go = (address: string): void => {
  location.hash = address;
};

/** Goes without leaving a step behind for the back button: from station to station of one round. */
export const goInstead = (address: string): void => {
  history.replaceState(null, '', address);
  window.dispatchEvent(new HashChangeEvent('hashchange'));
};

let cached = parseRoute('');
const read = (): Route => {
  const text = location.hash.replace(/^#\/?/, '');
  if (text !== cached.text) cached = parseRoute(location.hash);
  return cached;
};

export const useRoute = (): Route =>
  useSyncExternalStore((tell) => {
    window.addEventListener('hashchange', tell);
    return () => window.removeEventListener('hashchange', tell);
  }, read);
