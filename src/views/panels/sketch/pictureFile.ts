import { trace } from '../../../words/sketch';

const LIMIT = 1024 * 1024;
const KINDS = ['image/png', 'image/jpeg', 'image/webp', 'image/gif'];

/** A picture as it is kept in the home, with its size in pixels; or the sentence why it is none. */
export type PictureFile =
  { ok: true; image: string; width: number; height: number } | { ok: false; sentence: string };

function dataAddress(file: Blob): Promise<string> {
  return new Promise((done, failed) => {
    const reader = new FileReader();
    reader.onload = () => done(reader.result as string);
    reader.onerror = () => failed(reader.error);
    reader.readAsDataURL(file);
  });
}

/** Reads a chosen file as a picture to trace over. */
export async function readPicture(file: File): Promise<PictureFile> {
  if (!KINDS.includes(file.type)) return { ok: false, sentence: trace.notPicture(file.name) };
  if (file.size > LIMIT) return { ok: false, sentence: trace.tooLarge(file.size / LIMIT) };
  try {
    const bitmap = await createImageBitmap(file);
    const { width, height } = bitmap;
    bitmap.close();
    return { ok: true, image: await dataAddress(file), width, height };
  } catch {
    // The name says picture, the bytes do not.
    return { ok: false, sentence: trace.notPicture(file.name) };
  }
}
