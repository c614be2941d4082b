import type { Trouble } from '../trouble';

/**
 * What browsers throw, in words. The names are those of the IndexedDB and Web IDL standards; the messages that mark a lost handle are
 * what WebKit and Chromium write, from memory, unconfirmed, so the names decide first.
 */
const KEPT = 'Everything that was called kept is still on this device.';

const nameOf = (error: unknown): string =>
  error instanceof Error || (typeof error === 'object' && error !== null && 'name' in error) ? String((error as { name: unknown }).name) : '';
const messageOf = (error: unknown): string => (typeof error === 'object' && error !== null && 'message' in error ? String((error as { message: unknown }).message) : '');

export const isNoRoom = (error: unknown): boolean => nameOf(error) === 'QuotaExceededError' || /quota/i.test(messageOf(error));

/** The browser has let go of the database: a new handle may work, this one never will. */
export const isLostHandle = (error: unknown): boolean =>
  !isNoRoom(error) &&
  (['InvalidStateError', 'UnknownError', 'AbortError', 'TransactionInactiveError'].includes(nameOf(error)) ||
    /connection .*(lost|clos)|database .*clos|is closing/i.test(messageOf(error)));

/** Whether the failure is the outside world's. Anything else is our own mistake and is not dressed up. */
export const isStorageFailure = (error: unknown): boolean =>
  isNoRoom(error) ||
  isLostHandle(error) ||
  ['SecurityError', 'NotAllowedError', 'VersionError', 'NotReadableError', 'DataError', 'TimeoutError', 'ReferenceError-indexedDB'].includes(nameOf(error));

export const storageTrouble = (error: unknown): Trouble => {
  if (isNoRoom(error))
    return {
      code: 'no-room',
      happened: 'There is no room left on this device, so the last entry was not kept.',
      safe: KEPT,
      todo: 'Copy the logbook to a file, make room on the device, then give the answer again.',
    };
  if (nameOf(error) === 'SecurityError' || nameOf(error) === 'NotAllowedError' || nameOf(error) === 'ReferenceError-indexedDB')
    return {
      code: 'not-allowed',
      happened: 'This browser does not let the page keep anything. It may be a private window, or storage is switched off.',
      safe: 'Nothing has been recorded here, so nothing is lost.',
      todo: 'Open the page in a normal window, or allow it to keep data.',
    };
  if (isLostHandle(error))
    return {
      code: 'lost',
      happened: 'The browser closed the logbook, and it could not be opened again. The last entry may not have been kept.',
      safe: KEPT,
      todo: 'Close this page and open it again, then look whether the last answer is there.',
    };
  return {
    code: 'other',
    happened: `The browser could not use the logbook (${nameOf(error) || 'no reason given'}).`,
    safe: KEPT,
    todo: 'Close this page and open it again. Copy the logbook to a file.',
  };
};

export const HELD_BY_OLDER: Trouble = {
  code: 'held-by-older',
  happened: 'Another window still uses an older version of this page.',
  safe: KEPT,
  todo: 'Close the other windows of this page.',
};
