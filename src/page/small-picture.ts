/** Long side of a picture that goes with a note, px. */
const LONGEST_PX = 1280;

/** A picture made small, as JPEG in base64, without what the camera wrote into it (the place above all); undefined where it is none. */
export async function smallPicture(file: File): Promise<string | undefined> {
  const url = await read(file);
  const image = url === undefined ? undefined : await decoded(url);
  if (!image) return undefined;
  const scale = Math.min(1, LONGEST_PX / Math.max(image.naturalWidth, image.naturalHeight));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(image.naturalWidth * scale));
  canvas.height = Math.max(1, Math.round(image.naturalHeight * scale));
  const context = canvas.getContext('2d');
  if (!context) return undefined;
  context.drawImage(image, 0, 0, canvas.width, canvas.height);
  return canvas.toDataURL('image/jpeg', 0.72).split(',')[1];
}

const read = (file: File): Promise<string | undefined> =>
  new Promise((done) => {
    const reader = new FileReader();
    reader.addEventListener('load', () => done(String(reader.result)));
    reader.addEventListener('error', () => done(undefined));
    reader.readAsDataURL(file);
  });

const decoded = (url: string): Promise<HTMLImageElement | undefined> =>
  new Promise((done) => {
    const image = new Image();
    image.addEventListener('load', () => done(image.naturalWidth > 0 ? image : undefined));
    image.addEventListener('error', () => done(undefined));
    image.src = url;
  });
