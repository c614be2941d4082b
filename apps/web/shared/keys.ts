import { useEffect, useRef } from 'react';

/** Keyboard shortcuts of one screen. A key does nothing while the person writes text or holds Ctrl, Alt or Meta. */
export const useKeys = (keys: Readonly<Record<string, (() => void) | undefined>>): void => {
  const latest = useRef(keys);
  latest.current = keys;
  useEffect(() => {
    const press = (event: KeyboardEvent): void => {
      // A key that is held down must not answer one station after the other.
      if (event.repeat && event.key !== 'Backspace') return;
      if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || writesText(event.target)) return;
      // Enter and Space on a control of its own belong to that control.
      if ((event.key === 'Enter' || event.key === ' ') && event.target instanceof HTMLElement && event.target.closest('button, a, summary, select')) return;
      const action = latest.current[event.key];
      if (!action) return;
      event.preventDefault();
      action();
    };
    window.addEventListener('keydown', press);
    return () => window.removeEventListener('keydown', press);
  }, []);
};

const writesText = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  (target.isContentEditable ||
    target instanceof HTMLTextAreaElement ||
    target instanceof HTMLSelectElement ||
    (target instanceof HTMLInputElement && !['checkbox', 'radio', 'button'].includes(target.type)));
