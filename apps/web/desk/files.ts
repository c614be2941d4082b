/** Hands a file to the person: the browser asks where to, or puts it among the downloads. */
export const giveFile = (name: string, content: string | Uint8Array, type: string): void => {
  const address = URL.createObjectURL(new Blob([content as BlobPart], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The download reads the address after this task; giving it up at once would cut it off.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
};

export const readFile = async (file: File): Promise<Uint8Array> => new Uint8Array(await file.arrayBuffer());

const STEPS: readonly (readonly [number, string])[] = [
  [1e9, 'GB'],
  [1e6, 'MB'],
  [1e3, 'kB'],
];

/** `3.2 MB`. */
export const bytesWords = (bytes: number): string => {
  const step = STEPS.find(([size]) => bytes >= size);
  return step ? `${(bytes / step[0]).toFixed(bytes / step[0] < 10 ? 1 : 0)} ${step[1]}` : `${bytes} bytes`;
};
