/** A smaller copy of a photograph, made by the browser. */
export type Reduced = { readonly bytes: Uint8Array; readonly media_type: 'image/jpeg'; readonly width_px: number; readonly height_px: number };

/** Long edge of a reduced copy: enough to see a hairline crack in a seam that fills the picture. Our own choice. [px] */
const LONG_EDGE = 2000;
const QUALITY = 0.85;

/** Size that fits the long edge; never larger than the original. */
export const reducedSize = (width: number, height: number, edge = LONG_EDGE): { readonly width: number; readonly height: number } => {
  const scale = Math.min(1, edge / Math.max(width, height));
  return { width: Math.max(1, Math.round(width * scale)), height: Math.max(1, Math.round(height * scale)) };
};

/**
 * Draws a smaller copy, upright, without the camera's notes. Undefined when the browser cannot decode the picture
 * (HEIC outside its maker's browsers, a damaged file) or has no canvas here: then the original is kept.
 */
export const reducePhoto = (bytes: Uint8Array, media_type: string): Promise<Reduced | undefined> => drawnAt(bytes, media_type, LONG_EDGE, QUALITY);

/** Long edge for paper: 60 mm at 220 dots to the inch. [px] */
const PAPER_EDGE = 520;
const PAPER_QUALITY = 0.72;

/** The same for a sheet of paper: a small copy as an address that holds the picture itself. Undefined when there can be none. */
export const pictureForPaper = async (bytes: Uint8Array, media_type: string): Promise<string | undefined> => {
  const small = await drawnAt(bytes, media_type, PAPER_EDGE, PAPER_QUALITY);
  return small && `data:${small.media_type};base64,${btoa(Array.from(small.bytes, (b) => String.fromCharCode(b)).join(''))}`;
};

const drawnAt = async (bytes: Uint8Array, media_type: string, edge: number, quality: number): Promise<Reduced | undefined> => {
  if (typeof createImageBitmap === 'undefined' || typeof OffscreenCanvas === 'undefined') return undefined;
  let picture: ImageBitmap;
  try {
    picture = await createImageBitmap(new Blob([new Uint8Array(bytes)], { type: media_type }), { imageOrientation: 'from-image' });
  } catch {
    return undefined;
  }
  try {
    const { width, height } = reducedSize(picture.width, picture.height, edge);
    const canvas = new OffscreenCanvas(width, height);
    const context = canvas.getContext('2d');
    if (context === null) return undefined;
    context.imageSmoothingQuality = 'high';
    context.drawImage(picture, 0, 0, width, height);
    const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality });
    return { bytes: new Uint8Array(await blob.arrayBuffer()), media_type: 'image/jpeg', width_px: width, height_px: height };
  } catch {
    return undefined;
  } finally {
    picture.close();
  }
};
