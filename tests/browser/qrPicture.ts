import { toBuffer } from 'qrcode';

/** A photo to upload, as a page's file field takes it. */
export interface Upload {
  readonly name: string;
  readonly mimeType: string;
  readonly buffer: Buffer;
}

/** A picture of a code with that text, whatever it says. */
export async function qrPicture(text: string): Promise<Upload> {
  const buffer = await toBuffer(text, { errorCorrectionLevel: 'M', width: 480, margin: 4 });
  return { name: 'photo.png', mimeType: 'image/png', buffer };
}
