/** How much room there is, and whether the browser has promised not to clear it by itself. Only a page can ask for that promise, not a worker. */
export type Room = { readonly persisted: boolean | undefined; readonly used_bytes: number; readonly room_bytes: number };

/** Plain http pages have no storage manager: then nothing is known, and nothing is promised. */
const manager = (): StorageManager | undefined => (typeof navigator === 'undefined' ? undefined : navigator.storage);

export const room = async (): Promise<Room> => {
  try {
    const estimate = await manager()?.estimate?.();
    return { persisted: await manager()?.persisted?.(), used_bytes: estimate?.usage ?? 0, room_bytes: Math.max(0, (estimate?.quota ?? 0) - (estimate?.usage ?? 0)) };
  } catch {
    return { persisted: undefined, used_bytes: 0, room_bytes: 0 };
  }
};
