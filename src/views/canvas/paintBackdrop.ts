import type { Backdrop } from '../../home/home';
import { inPlan, type Sheet } from './sheet';

/** A painter of the photo or scan being traced, under everything else; `loaded` is called when a picture is ready. */
export function createBackdropPainter(loaded: () => void): (sheet: Sheet, backdrop: Backdrop) => void {
  let image: HTMLImageElement | null = null;
  let source = '';
  return (sheet, backdrop) => {
    if (!image || source !== backdrop.image) {
      source = backdrop.image;
      image = new Image();
      image.onload = loaded;
      image.src = source;
    }
    if (image.complete && image.naturalWidth > 0) paint(sheet, backdrop, image);
  };
}

function paint(
  sheet: Sheet,
  { at, angle, opacity, metresPerPixel }: Backdrop,
  image: HTMLImageElement,
): void {
  const [width, height] = [image.naturalWidth * metresPerPixel, image.naturalHeight * metresPerPixel];
  inPlan(sheet, () => {
    const { context } = sheet;
    context.translate(...at);
    context.rotate((angle * Math.PI) / 180);
    // The plan's y runs up, the picture's down.
    context.scale(1, -1);
    context.globalAlpha = opacity;
    context.drawImage(image, 0, -height, width, height);
  });
}
