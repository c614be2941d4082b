import { createContext, type ReactNode, use, useCallback, useEffect, useMemo, useState } from 'react';
import type { Preferences, UnitSystem } from '../../../src/units';

/** What a person chose on this device. It is about showing and asking only; nothing of it changes the logbook. */
export type Settings = Preferences & {
  /** Name written beside every entry. */
  readonly by: string;
  readonly hand: 'right' | 'left';
  readonly theme: 'light' | 'night';
  /** Which screens a rig opens with; `auto` follows the width of the window. */
  readonly view: 'auto' | 'field' | 'desk';
  readonly photos: 'original' | 'reduced';
};

const KEY = 'seamward-settings';
const FEET_REGIONS: readonly string[] = ['US', 'LR', 'MM'];

const usualSystem = (): UnitSystem => {
  const region = /-([A-Z]{2})\b/.exec(navigator.language)?.[1];
  return region !== undefined && FEET_REGIONS.includes(region) ? 'us' : 'metric';
};

const first = (): Settings => ({ by: '', system: usualSystem(), units: {}, hand: 'right', theme: 'light', view: 'auto', photos: 'original' });

/** The settings as they are stored on this device, for what runs before the page is drawn. */
export const storedSettings = (): Settings => {
  try {
    return { ...first(), ...(JSON.parse(localStorage.getItem(KEY) ?? '{}') as Partial<Settings>) };
  } catch {
    return first();
  }
};

type Held = { readonly settings: Settings; readonly change: (part: Partial<Settings>) => void };
const Context = createContext<Held | undefined>(undefined);

export const SettingsProvider = ({ children }: { readonly children: ReactNode }) => {
  const [settings, set] = useState(storedSettings);
  const change = useCallback((part: Partial<Settings>) => {
    set((old) => {
      const next = { ...old, ...part };
      try {
        localStorage.setItem(KEY, JSON.stringify(next));
      } catch {
        // Storage is shut or full: the choice holds until the page closes.
      }
      return next;
    });
  }, []);
  useEffect(() => {
    document.documentElement.dataset['theme'] = settings.theme;
    document.documentElement.dataset['hand'] = settings.hand;
    document.querySelector('meta[name="theme-color"]')?.setAttribute('content', settings.theme === 'night' ? '#0b0b0c' : '#ffffff');
  }, [settings.theme, settings.hand]);
  const held = useMemo(() => ({ settings, change }), [settings, change]);
  return <Context value={held}>{children}</Context>;
};

const held = (found: Held | undefined): Held => {
  if (!found) throw new Error('settings are read outside their provider');
  return found;
};

export const useSettings = (): Settings => held(use(Context)).settings;
export const useChangeSettings = (): Held['change'] => held(use(Context)).change;

/** Who stands beside an entry when no name was given. */
export const byOf = (settings: Settings): string => settings.by.trim() || 'owner';
