import type { RigId } from '../../terms';

/** Tells every window of this page on this device that a rig's logbook has grown. */
export type Changes = { readonly tell: (rigs: Iterable<RigId>) => void; readonly watch: (changed: (rig: RigId) => void) => () => void; readonly close: () => void };

export const openChanges = (name: string): Changes => {
  const listeners = new Set<(rig: RigId) => void>();
  const hear = (rig: RigId): void => {
    for (const listener of listeners) listener(rig);
  };
  // Old browsers lack it; then a window learns of the others' entries when it is opened or shown again.
  const channel = typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel(name);
  if (channel) channel.onmessage = ({ data }: { data: unknown }) => typeof data === 'string' && hear(data);
  return {
    tell: (rigs) => {
      for (const rig of new Set(rigs)) {
        hear(rig);
        channel?.postMessage(rig);
      }
    },
    watch: (changed) => {
      listeners.add(changed);
      return () => void listeners.delete(changed);
    },
    close: () => channel?.close(),
  };
};
