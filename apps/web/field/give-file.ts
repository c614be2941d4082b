/** Hands a file to the person: it is saved where the browser saves downloads. */
export const giveFile = (name: string, content: Uint8Array | string, media_type: string): void => {
  const address = URL.createObjectURL(new Blob([content as BlobPart], { type: media_type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
};
